using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.PrintRoom.Letters;
using WitnessMark.PrintRoom.Shapes;

namespace WitnessMark.PrintRoom.Cutter;

/// <summary>
/// A sheet as an ASCII DXF of release 12, the oldest that cutters and readers still agree on; mm, figures to 1e-6 mm.
/// Lines and arcs that close up become one polyline with bulges; ellipses become polylines, chords within 0.002 mm.
/// A filled triangle becomes a solid; any other filled shape its outline.
/// </summary>
public static class Dxf
{
    const double Flatness = 0.002;

    /// <exception cref="RefusedException">A mark has a coordinate that is no number, or the sheet no size.</exception>
    public static string Write(Sheet sheet, DxfOptions? options = null)
    {
        Guard.Check(sheet);
        options ??= DxfOptions.Default;
        var file = new DxfFile();
        DxfHead.Write(file, sheet);
        file.Open("BLOCKS").Close();
        file.Open("ENTITIES");
        Entities(file, sheet.Marks, options);
        return file.Close().Put(0, "EOF").ToString();
    }

    static void Entities(DxfFile file, ImmutableArray<Mark> marks, DxfOptions options)
    {
        var loops = Loops.In(marks).ToList();
        var starts = loops.ToDictionary(l => l.Marks.Min(), l => l.Corners);
        var taken = loops.SelectMany(l => l.Marks).ToHashSet();
        for (var i = 0; i < marks.Length; i++)
            if (starts.TryGetValue(i, out var corners)) Polyline(file, marks[i], corners, true);
            else if (!taken.Contains(i)) Entity(file, marks[i], options);
    }

    static void Entity(DxfFile file, Mark mark, DxfOptions options)
    {
        switch (mark)
        {
            case LineMark m: Begin(file, "LINE", m).Put(10, m.A).Put(11, m.B); break;
            case CircleMark m: Circle(file, m, m.Centre, m.Radius); break;
            case ArcMark m when Arcs.IsWhole(m): Circle(file, m, m.Centre, m.Radius); break;
            case ArcMark m: Arc(file, m); break;
            case PathMark { Filled: true, Points.Length: 3 } m: Solid(file, m); break;
            case TextMark m when !options.LetteringAsStrokes: Text(file, m); break;
            default:
                foreach (var curve in Curves.Of(mark)) Polyline(file, mark, curve);
                break;
        }
    }

    static DxfFile Begin(DxfFile file, string entity, Mark mark)
    {
        file.Put(0, entity).Put(8, DxfText.Layer(mark.Layer));
        return DxfHead.LineType(mark.Stroke) is var type and not DxfHead.Continuous ? file.Put(6, type) : file;
    }

    static void Circle(DxfFile file, Mark mark, Vec2 centre, double radius) => Begin(file, "CIRCLE", mark).Put(10, centre).Put(40, radius);

    /// <summary>Always anticlockwise in the file, degrees.</summary>
    static void Arc(DxfFile file, ArcMark m)
    {
        var start = m.Sweep < 0 ? m.Start + m.Sweep : m.Start;
        Begin(file, "ARC", m).Put(10, m.Centre).Put(40, m.Radius).Put(50, Degrees(start)).Put(51, Degrees(start + Math.Abs(m.Sweep)));
    }

    static void Polyline(DxfFile file, Mark mark, IReadOnlyList<Corner> corners, bool closed)
    {
        Begin(file, "POLYLINE", mark).Put(66, 1).Put(10, Vec2.Zero).Put(70, closed ? 1 : 0);
        foreach (var corner in corners)
        {
            file.Put(0, "VERTEX").Put(8, DxfText.Layer(mark.Layer)).Put(10, corner.At);
            if (corner.Bulge != 0) file.Put(42, corner.Bulge);
        }
        file.Put(0, "SEQEND").Put(8, DxfText.Layer(mark.Layer));
    }

    static void Polyline(DxfFile file, Mark mark, Curve curve)
    {
        var points = curve.Points(Flatness);
        var returns = points.Length > 2 && points[0].DistanceTo(points[^1]) < Loops.Together;
        Polyline(file, mark, [.. (returns ? points.SkipLast(1) : points).Select(p => new Corner(p))], returns || curve.Closed);
    }

    /// <summary>A solid has four corners; a triangle names its last one twice.</summary>
    static void Solid(DxfFile file, PathMark m) =>
        Begin(file, "SOLID", m).Put(10, m.Points[0]).Put(11, m.Points[1]).Put(12, m.Points[2]).Put(13, m.Points[2]);

    static void Text(DxfFile file, TextMark m)
    {
        if (m.Text.Length == 0) return;
        Begin(file, "TEXT", m).Put(10, Lettering.Start(m)).Put(40, m.Height).Put(1, DxfText.Of(m.Text)).Put(50, Degrees(m.Turn));
        if (m.Anchor != Anchor.Left) file.Put(72, m.Anchor == Anchor.Middle ? 1 : 2).Put(11, m.At);
    }

    static double Degrees(double radians)
    {
        var degrees = radians * 180 / Math.PI % 360;
        return degrees < 0 ? degrees + 360 : degrees;
    }
}
