using System.Collections.Immutable;
using System.Globalization;
using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;
using WitnessMark.PrintRoom;

namespace WitnessMark.DrawingOffice.Pieces.Sheets;

/// <summary>A piece at 1:1 for the cutter's DXF and the paper template: what is cut, where it is bent, what is scribed, each lettered where there is room.</summary>
public static class PieceSheet
{
    const double Foot = 8;

    /// <param name="margin">Round the piece, mm; its name stands below it.</param>
    public static Sheet ToSheet(this Piece piece, double margin = 10)
    {
        var extent = piece.Outline.Flatten(0.01);
        var (left, low) = (extent.Min(p => p.X), extent.Min(p => p.Y));
        var moved = piece.Moved(Pose2.Shift(new(margin - left, margin + Foot - low)));
        ImmutableArray<Mark> marks =
        [
            .. Marks(moved),
            .. Lettered(moved),
            new TextMark(new(margin, margin), Named(piece), 3.5, Layers.Text),
        ];
        return new(piece.Name, extent.Max(p => p.X) - left + 2 * margin, extent.Max(p => p.Y) - low + 2 * margin + Foot, marks);
    }

    static string Named(Piece piece) => string.Create(CultureInfo.InvariantCulture,
        $"{piece.Name}, {piece.Thickness:0.##} mm, {piece.Quantity} off{(piece.Handed ? " of each hand: turn this over for the other" : "")}");

    /// <summary>All but lettering, in the piece's frame.</summary>
    public static IEnumerable<Mark> Marks(Piece piece) =>
    [
        .. CutMarks.Of(piece.Outline, Layers.Outline),
        .. piece.Openings.SelectMany(CutMarks.Of),
        .. piece.Creases.SelectMany(Bend),
        .. piece.Witnesses.SelectMany(Scribed),
    ];

    static IEnumerable<Mark> Bend(Crease crease)
    {
        yield return Line(crease.Line, Layers.Bends, Stroke.Fold, Tone.Ink);
        if (crease is not { Width: > 0, Line: [var a, var b] }) yield break;
        var aside = (b - a).Unit.Left * (crease.Width / 2);
        yield return new LineMark(a + aside, b + aside, Layers.Bends, Stroke.Thin, Tone.Quiet);
        yield return new LineMark(a - aside, b - aside, Layers.Bends, Stroke.Thin, Tone.Quiet);
    }

    static IEnumerable<Mark> Scribed(Witness witness)
    {
        if (witness.Line is not [var spot])
        {
            yield return Line(witness.Line, Layers.Witness, Stroke.Thin, Tone.Quiet);
            yield break;
        }
        const double arm = 2;
        yield return new LineMark(spot - new Vec2(arm, 0), spot + new Vec2(arm, 0), Layers.Witness, Stroke.Thin, Tone.Quiet);
        yield return new LineMark(spot - new Vec2(0, arm), spot + new Vec2(0, arm), Layers.Witness, Stroke.Thin, Tone.Quiet);
    }

    static Mark Line(ImmutableArray<Vec2> line, string layer, Stroke stroke, Tone tone) =>
        line is [var a, var b] ? new LineMark(a, b, layer, stroke, tone) : new PathMark(line, Closed: false, Filled: false, layer, stroke, tone);

    static List<TextMark> Lettered(Piece piece)
    {
        var room = new LetterRoom(piece);
        foreach (var (crease, i) in piece.Creases.Select((c, i) => (c, i)))
        {
            var words = string.Create(CultureInfo.InvariantCulture, $"{i + 1}: {Math.Abs(crease.Angle) * 180 / Math.PI:0.#}° {(crease.Angle > 0 ? "UP" : "DOWN")} R{crease.InsideRadius:0.##}");
            if (!room.Put(crease.Line, crease.Width / 2, words)) room.Put(crease.Line, crease.Width / 2, $"{i + 1}");
        }
        foreach (var witness in piece.Witnesses) room.Put(witness.Line, 0, witness.Words);
        return room.Put();
    }
}
