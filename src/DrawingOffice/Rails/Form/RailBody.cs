using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.PrintRoom.Pictorial;

namespace WitnessMark.DrawingOffice.Rails;

/// <summary>
/// The formed rail as a closed body. Sections are set where anything changes and so close on arcs that chords stay within
/// <see cref="ChordError"/>. At sharp corners and creases the section stands in the bisecting plane, as the finished rail shows once its corners are
/// welded; the small radius of a crease is not drawn. Holes are drawn in flat faces only.
/// </summary>
static class RailBody
{
    /// <summary>mm.</summary>
    public const double ChordError = 0.05;

    /// <summary>Chords of a fold, enough for the picture: a fold of 90° loses a fortieth of its own area by them.</summary>
    public const int FoldChords = 4;

    /// <summary>A turning section is followed in steps of at most this, radians.</summary>
    const double TurnStep = Math.PI / 90;

    public static Body Of(RailForm form, ImmutableArray<PlacedHole> holes, int foldChords = FoldChords)
    {
        var at = Places(form);
        var sections = new SectionLine[at.Count];
        for (var i = 0; i < sections.Length; i++) sections[i] = Section(form, at[i], foldChords);
        return Loft.Of(form, at, sections, holes, foldChords);
    }

    /// <summary>Places along the base line, mm.</summary>
    public static List<double> Places(RailForm form)
    {
        var all = new List<double>();
        var creases = new List<(double From, double To)>();
        foreach (var edge in new[] { form.Lower, form.Upper })
            foreach (var part in edge.Parts)
            {
                var (from, to) = (edge.BaseAt(part.From), edge.BaseAt(part.To));
                if (part.InCrease)
                {
                    creases.Add((from, to));
                    continue;
                }
                var place = edge.Place(part.Middle, part.Step);
                var bent = Math.Max(Math.Abs(place.CurveOut), Math.Abs(place.CurveEye));
                var n = bent > 0 ? Maths.Geometry.Arc.Chords(1 / bent + edge.DevelopedAt(part.Middle), bent * (part.To - part.From), ChordError) : 1;
                n = Math.Max(n, (int)Math.Ceiling(Math.Abs(form.TurnAt(to) - form.TurnAt(from)) / TurnStep));
                for (var k = 0; k <= n; k++) all.Add(from + (to - from) * k / n);
            }
        foreach (var (from, to) in creases) all.RemoveAll(x => x > from - 1e-6 && x < to + 1e-6);
        for (var i = 0; i < form.Plan.Count; i++)
            if (form.Plan.Creases[i]) all.Add(StationOfCrease(form, i));
        all.Sort();
        var apart = new List<double>();
        foreach (var x in all)
            if (apart.Count == 0 || x - apart[^1] > 1e-6) apart.Add(x);
        return apart;
    }

    /// <summary>A crease lies at its station.</summary>
    static double StationOfCrease(RailForm form, int step)
    {
        var middle = form.Plan.StartOf(step) + form.Plan.Flats[step] / 2;
        return form.Rail.Stations.MinBy(s => Math.Abs(form.Lower.Line.At(form.Lower.AlongAt(s.At)).X - middle))!.At;
    }

    static SectionLine Section(RailForm form, double x, int chords)
    {
        var (points, squares) = (new List<Vec3>(), new List<Vec3>());
        Side(form, form.Lower, x, chords, points, squares);
        var faces = points.Count;
        points.Reverse();
        squares.Reverse();
        Side(form, form.Upper, x, chords, points, squares);
        return new([.. points], [.. squares], faces - 1);
    }

    static void Side(RailForm form, FoldEdge edge, double x, int chords, List<Vec3> points, List<Vec3> squares)
    {
        var along = edge.AlongAt(x);
        var place = edge.Place(along);
        var outward = Mitred(edge, along) ?? place.Out;
        var standing = form.Stand(x, place.At);
        var eyeScale = form.Plan.IsCrease(place.At.X) ? 1 / Math.Cos(form.Plan.TurnAt(place.At.X) / 2) : 1;
        Vec3 Out(double o, double e) => (standing.Along * outward.X + standing.Up * outward.Y) * o + standing.Eye * (e * eyeScale);
        if (edge.Shape is not { } shape)
        {
            points.Add(standing.At);
            squares.Add(standing.Eye * eyeScale);
            return;
        }
        var (flange, lip) = (edge.FlangeAt(along), edge.LipAt(along));
        foreach (var flat in Flats(shape, flange, lip, chords))
        {
            var (o, e, turned) = shape.At(flat, flange);
            var (s, c) = Math.SinCos(turned);
            points.Add(standing.At + Out(o, e));
            squares.Add(Out(-s, c));
        }
    }

    static IEnumerable<double> Flats(SideShape shape, double flange, double lip, int chords)
    {
        for (var k = 0; k <= chords; k++) yield return shape.Allowance * k / chords;
        var at = shape.Allowance + shape.Flat(flange);
        yield return at;
        if (shape.LipTurn == 0) yield break;
        for (var k = 1; k <= chords; k++) yield return at + shape.LipAllowance * k / chords;
        yield return shape.Developed(flange, lip);
    }

    /// <summary>At a sharp corner, along its bisector and so long that both sides move by 1.</summary>
    static Vec2? Mitred(FoldEdge edge, double along)
    {
        for (var i = 1; i < edge.Line.Steps.Length; i++)
        {
            if (Math.Abs(edge.Line.StartOf(i) - along) > 1e-6) continue;
            var (a, b) = (edge.Place(along, i - 1).Out, edge.Place(along, i).Out);
            return (a + b) / (1 + a.Dot(b));
        }
        return null;
    }
}

/// <summary>The middle line of one section from the lower free edge to the upper, and square to the sheet at each point, towards the side seen on the blank.</summary>
/// <param name="Web">Index of the point where the web's flat begins.</param>
readonly record struct SectionLine(ImmutableArray<Vec3> Points, ImmutableArray<Vec3> Squares, int Web);
