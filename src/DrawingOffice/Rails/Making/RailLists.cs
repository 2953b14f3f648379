using System.Collections.Immutable;
using System.Globalization;
using WitnessMark.DrawingOffice.Pieces;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Rails;

/// <summary>Figures of a rail to work from.</summary>
static class RailLists
{
    public static ImmutableArray<Listing> Of(RailForm form, ImmutableArray<EdgeWays> ways, ImmutableArray<PlacedHole> holes)
    {
        var lists = ImmutableArray.CreateBuilder<Listing>();
        lists.Add(Stations(form));
        lists.Add(Strain(ways));
        lists.Add(new("Ways to make each flange, best first", ["flange", "way", "hours", "weld mm", "why"],
            [.. ways.SelectMany(e => e.Ways.Select(w => ImmutableArray.Create(e.Strain.Edge, w.Kind.ToString().ToLowerInvariant() + (w.Reachable ? "" : ", not within reach"), Write(w.Hours, "0.0"), Write(w.WeldLength, "0"), w.Words)))]));
        if (holes.Any(h => h.Hole.Nut is not null))
            lists.Add(new("Nuts", ["hole", "face", "at mm", "nut"], [.. holes.Where(h => h.Hole.Nut is not null).Select(h => ImmutableArray.Create(h.Hole.Id, RailHoles.Words(h.Hole.Face), Write(h.Hole.At, "0.0"), h.Hole.Nut!))]));
        return lists.ToImmutable();
    }

    static Listing Stations(RailForm form)
    {
        ImmutableArray<string> Row(int k)
        {
            var (low, high) = (form.Lower.Line.At(form.Lower.Marks[k]), form.Upper.Line.At(form.Upper.Marks[k]));
            return [$"{k + 1}", Write(form.Rail.Stations[k].At, "0.0"), Place(low), Place(high), Write(form.Lower.DevelopedAt(form.Lower.Marks[k]), "0.00"), Write(form.Upper.DevelopedAt(form.Upper.Marks[k]), "0.00")];
        }
        return new("Stations on the blank", ["station", "along", "lower bend begins x, y", "upper bend begins x, y", "from there down", "from there up"], [.. Enumerable.Range(0, form.Rail.Stations.Length).Select(Row)]);
    }

    static Listing Strain(ImmutableArray<EdgeWays> ways)
    {
        var rows = ImmutableArray.CreateBuilder<ImmutableArray<string>>();
        foreach (var e in ways)
        {
            foreach (var s in e.Strain.Spans.Where(s => Math.Abs(s.Edge) > 1e-5 || Math.Abs(s.Lip) > 1e-5))
                rows.Add([e.Strain.Edge, $"{Write(s.From, "0")} to {Write(s.To, "0")}", PerCent(s.Middle), PerCent(s.Edge), double.IsNaN(s.Lip) ? "" : PerCent(s.Lip), $"{Write(s.Change, "+0.0;-0.0;0")} mm"]);
            foreach (var g in e.Strain.Gaps)
                rows.Add([e.Strain.Edge, Write(g.At, "0"), "", g.Width > 0 ? "opens, filled" : g.InBlank ? "open in the blank, welded shut" : "V cut out, welded shut", "", $"{Write(Math.Abs(g.Width), "0.0")} mm"]);
        }
        if (rows.Count == 0) rows.Add(["both", "all along", "0 %", "0 %", "", "0 mm"]);
        return new("Stretch (+) and shrink (−) of the flanges in one piece", ["flange", "along mm", "half way", "free edge", "lip", "whole"], rows.ToImmutable());
    }

    static string Place(Vec2 p) => $"{Write(p.X, "0.00")}, {Write(p.Y, "0.00")}";

    static string PerCent(double share) => $"{Write(share * 100, "+0.0;-0.0;0")} %";

    static string Write(double v, string format) => v.ToString(format, CultureInfo.InvariantCulture);
}
