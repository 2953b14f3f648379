using System.Collections.Immutable;
using System.Globalization;
using WitnessMark.DrawingOffice.Drafting.Paper;
using WitnessMark.Maths;
using WitnessMark.PrintRoom;

namespace WitnessMark.DrawingOffice.Drafting.Solid;

/// <summary>The tables that stand beside the views of a solid.</summary>
static class SolidLists
{
    const string Loose = "loose";

    /// <summary>Holes, dimensions, faces to one another, heights over the first face, corners, notes; those with nothing in them left out.</summary>
    public static ImmutableArray<Table> All(SolidPart part, ImmutableArray<SolidDimension> dimensions, Writing writing) =>
        [.. new[] { Holes(part, writing), Dimensions(part, dimensions, writing), Faces(part, writing), Heights(part, writing), Corners(part, writing), Notes(part) }.Where(t => t.Rows.Length > 0)];

    static Table Holes(SolidPart part, Writing writing) => new("Holes and rounds",
        [new("id"), new("⌀", Anchor.Right), new("±", Anchor.Right), new("x", Anchor.Right), new("y", Anchor.Right), new("z", Anchor.Right), new("±", Anchor.Right)],
        [.. part.Rounds.Select(r => Row([r.Id, Value(r.Diameter, writing), Spread(r.Diameter, writing), .. Place(r.Centre, r.Std, r.Loose, writing)]))]);

    static Table Corners(SolidPart part, Writing writing) => new("Corners",
        [new("id"), new("x", Anchor.Right), new("y", Anchor.Right), new("z", Anchor.Right), new("±", Anchor.Right)],
        [.. part.Points.Select(p => Row([p.Id, .. Place(p.At, p.Std, p.Loose, writing)]))]);

    /// <summary>Those in the views by their numbers, then the lengths that no view sees true.</summary>
    static Table Dimensions(SolidPart part, ImmutableArray<SolidDimension> dimensions, Writing writing)
    {
        var unseen = part.Lines.Where(l => l is { Loose: false, Length: not null } && dimensions.All(d => d.What != Words(l)));
        return new("Dimensions",
            [new("no.", Anchor.Right), new("what"), new("measured", Anchor.Right), new("±", Anchor.Right)],
            [
                .. dimensions.Select(d => Row([d.Number.ToString(CultureInfo.InvariantCulture), d.What, d.Text, d.IsAngle ? AngleSpread(d.Value) : Spread(d.Value, writing)])),
                .. unseen.Select(l => Row([Table.Unknown, Words(l), Value(l.Length, writing), Spread(l.Length, writing)])),
            ]);
    }

    /// <summary>An edge's length as the tables name it.</summary>
    public static string Words(SolidLine l) => $"{l.Id}, corner to corner";

    static Table Faces(SolidPart part, Writing writing) => new Table("Faces to one another",
        [new("faces"), new("setting angle", Anchor.Right), new("±", Anchor.Right), new("apart", Anchor.Right), new("±", Anchor.Right)],
        [.. part.Pairs.Select(p => Row([$"{p.A} to {p.B}", Angle(p.Angle), AngleSpread(p.Angle), p.Apart is null ? Table.Unknown : Value(p.Apart, writing), Spread(p.Apart, writing)]))]).WithoutEmpty();

    static Table Heights(SolidPart part, Writing writing) => new($"Heights over face {part.Heights.FirstOrDefault()?.Face}",
        [new("of"), new("height", Anchor.Right), new("±", Anchor.Right)],
        [.. part.Heights.Select(h => Row([h.Id, Value(h.Height, writing), Spread(h.Height, writing)]))]);

    static Table Notes(SolidPart part) => new("Notes", [new(""), new("")],
        [.. part.Notes.Select((n, i) => Row([$"{i + 1}", string.Join('\n', Letter.Lines(n, 100, Letter.Small))]))]);

    static ImmutableArray<string> Row(ReadOnlySpan<string> cells) => [.. cells];

    static string[] Place(Vec3 at, double? std, bool loose, Writing writing) => loose
        ? [Loose, Loose, Loose, Table.Unknown]
        : [writing.Length(at.X, std), writing.Length(at.Y, std), writing.Length(at.Z, std), Spread(std, writing)];

    static string Value(Uncertain? u, Writing writing) => u is { } v ? writing.Length(v.Value, v.Std) : Loose;

    static string Spread(Uncertain? u, Writing writing) => Spread(u?.Std, writing);

    static string Spread(double? std, Writing writing) => std is { } s ? writing.Spread(new Uncertain(0, s).Expanded) : Table.Unknown;

    static string Angle(Uncertain? u) => u is { } v ? $"{Degrees(v.Value).ToString("0.00", CultureInfo.InvariantCulture)}°" : Loose;

    static string AngleSpread(Uncertain? u) => u is { } v ? $"{Degrees(v.Expanded).ToString("0.00", CultureInfo.InvariantCulture)}°" : Table.Unknown;

    static double Degrees(double radians) => radians * 180 / Math.PI;
}
