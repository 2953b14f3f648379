using System.Collections.Immutable;
using System.Globalization;
using WitnessMark.DrawingOffice.Drafting.Paper;
using WitnessMark.Maths;
using WitnessMark.PrintRoom;

namespace WitnessMark.DrawingOffice.Drafting.Dimensions;

/// <summary>The tables that stand beside a view.</summary>
static class Lists
{
    /// <summary>One row for each hole and slot.</summary>
    /// <param name="given">What the view dimensions as well stands in brackets here (ISO 129-1: each dimension once).</param>
    public static Table Holes(IReadOnlyList<Hole> holes, FlatPart part, Given given, Knowledge knowledge, Writing writing)
    {
        var named = holes.Any(h => h.Id.Length > 0);
        ImmutableArray<Column> columns =
        [
            new("hole"), .. named ? [new Column("id")] : ImmutableArray<Column>.Empty,
            new("made to"), new(Heading(part), Anchor.Right), new("±", Anchor.Right), new("wanted ±", Anchor.Right),
            new("x", Anchor.Right), new("±", Anchor.Right), new("y", Anchor.Right), new("±", Anchor.Right),
        ];
        return new Table("Holes", columns, [.. holes.Select(Row)]).WithoutEmpty();

        ImmutableArray<string> Row(Hole h)
        {
            var id = h.Id.Length > 0 ? h.Id : null;
            var at = h.Middle - part.Origin;
            var x = Std(new(part.Datum?.Id, id, new(1, 0), at.X));
            var y = Std(new(part.Datum?.Id, id, new(0, 1), at.Y));
            return
            [
                h.Letter, .. named ? [h.Id] : ImmutableArray<string>.Empty,
                MadeTo(h), Measured(h, writing), Spread(h.Size.Std, writing), Wanted(h.Size.Wanted, writing),
                Place(at.X, x, given.Across), Spread(x, writing), Place(at.Y, y, given.Up), Spread(y, writing),
            ];

            string Place(double value, double? std, IReadOnlySet<string> inView) => inView.Contains(h.Letter) ? $"({writing.Length(value, std)})" : writing.Length(value, std);
        }

        double? Std(Span span) => knowledge.Std(span);
    }

    /// <summary>One row for each dimension in the view.</summary>
    public static Table Dimensions(IReadOnlyList<DimensionItem> items, FlatPart part, Writing writing) => new Table(
        "Dimensions",
        [new("no.", Anchor.Right), new("what"), new("made to"), new(Heading(part), Anchor.Right), new("±", Anchor.Right), new("wanted ±", Anchor.Right)],
        [.. items.Select(i => Row(i, writing))]).WithoutEmpty();

    /// <summary>More corners than this are marked out from the template.</summary>
    const int MostCorners = 240;

    /// <summary>The outline by the places of its corners, for a part with more of them than a view can dimension; null for far too many.</summary>
    public static Table? Corners(FlatPart part, Writing writing)
    {
        const int Abreast = 4;
        var corners = part.Loops[0].Select(s => s.From - part.Origin).ToList();
        if (corners.Count > MostCorners) return null;
        var deep = (corners.Count + Abreast - 1) / Abreast;
        string[] Cells(int k) => k < corners.Count ? [$"{k + 1}", writing.Length(corners[k].X, null), writing.Length(corners[k].Y, null)] : ["", "", ""];
        return new("Corners, anticlockwise", [.. Enumerable.Repeat<Column[]>([new("", Anchor.Right), new("x", Anchor.Right), new("y", Anchor.Right)], Abreast).SelectMany(c => c)],
            [.. Enumerable.Range(0, deep).Select(r => (ImmutableArray<string>)[.. Enumerable.Range(0, Abreast).SelectMany(c => Cells(c * deep + r))])]);
    }

    static ImmutableArray<string> Row(DimensionItem i, Writing writing)
    {
        var measured = i.Kind == DimensionKind.Angle ? Writing.Angle(i.Value) : writing.Length(i.Value, i.Std);
        return
        [
            i.Number.ToString(CultureInfo.InvariantCulture), i.What, i.MadeTo ?? Table.Unknown,
            i.Auxiliary ? $"({measured})" : measured, Spread(i.Std, writing),
            Wanted(i.Wanted, writing),
        ];
    }

    static string Heading(FlatPart part) => part.Designed ? "size" : "measured";

    static string Spread(double? std, Writing writing) => std is { } s ? writing.Spread(new Uncertain(0, s).Expanded) : Table.Unknown;

    static string Wanted(double? wanted, Writing writing) => wanted is { } w ? writing.Spread(w) : Table.Unknown;

    static string Measured(Hole h, Writing writing)
    {
        var size = writing.Length(h.Size.Value, h.Size.Std);
        return h.Between is { } between ? $"{size} × {writing.Length(between.Value, between.Std)}" : "⌀" + size;
    }

    static string MadeTo(Hole h) => (h.Size.MadeTo, h.Between?.MadeTo) switch
    {
        (null, null) => Table.Unknown,
        ({ } size, null) => h.Between is null ? "⌀" + size : $"{size} wide",
        (null, { } between) => $"{between} centres",
        ({ } size, { } between) => $"{size} wide, {between} centres",
    };
}
