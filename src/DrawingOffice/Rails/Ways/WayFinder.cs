using System.Collections.Immutable;

namespace WitnessMark.DrawingOffice.Rails;

/// <summary>Weighs the ways to make each flange: those within reach first, and of them the one with the fewest hours.</summary>
static class WayFinder
{
    // Hours, rough, common practice of one person with a folder, a vice and a welding set.
    const double FoldHours = 0.2;
    const double FormerHours = 1.5;
    const double HammerHoursPerMetrePerCent = 0.5;
    const double CutHours = 0.12;
    const double WeldHoursPerMetre = 2.5;   // tacked, welded in short runs, dressed
    const double PieceHours = 0.6;

    public static ImmutableArray<EdgeWays> Of(RailForm form, ImmutableArray<EdgeStrain> strains, WorkLimits limits) =>
        [.. form.Folds.Zip(strains, (edge, strain) => new EdgeWays(strain, Ranked(form, edge, strain, limits)))];

    static ImmutableArray<Way> Ranked(RailForm form, FoldEdge edge, EdgeStrain strain, WorkLimits limits)
    {
        Way[] all = [Fold(edge, strain), Hammer(form, edge, strain, limits), Notch(edge, strain), Separate(form, edge, strain)];
        var straight = all[0].Reachable;
        return [.. all.Where(w => !straight || w.Kind is WayKind.Fold or WayKind.Separate).OrderByDescending(w => w.Reachable).ThenBy(w => w.Hours)];
    }

    /// <summary>Corners and creases are closed by weld whatever the way.</summary>
    static double GapWeld(FoldEdge edge) => edge.Wedges.Sum(w => edge.DevelopedAt(w.Along) - edge.Shape!.Allowance);

    static double Weld(double length) => length / 1000 * WeldHoursPerMetre;

    static string Strains(EdgeStrain s) => (s.Stretch, s.Shrink) switch
    {
        ( <= 0.0005, <= 0.0005) => "neither stretches nor shrinks",
        ( <= 0.0005, var k) => $"shrinks {k * 100:0.0} % at most",
        (var t, <= 0.0005) => $"stretches {t * 100:0.0} % at most",
        var (t, k) => $"stretches {t * 100:0.0} % and shrinks {k * 100:0.0} % at most",
    };

    static string Corners(EdgeStrain s) => s.Gaps.Length == 0 ? "" : s.Gaps.Length == 1 ? "; one corner or crease is welded" : $"; {s.Gaps.Length} corners or creases are welded";

    static Way Fold(FoldEdge edge, EdgeStrain s)
    {
        var weld = GapWeld(edge);
        var reachable = s.Stretch <= EdgeStrain.Unseen && s.Shrink <= EdgeStrain.Unseen;
        return new(WayKind.Fold, reachable, FoldHours * (1 + s.Gaps.Length) + CutHours * s.Gaps.Length + Weld(weld), weld, 0, 0, 0,
            reachable ? $"Fold in one piece: the {s.Edge} flange {Strains(s)}{Corners(s)}."
                : $"Folding alone does not reach: the {s.Edge} flange {Strains(s)}, and bending takes up no more than {EdgeStrain.Unseen * 100:0.0} %.");
    }

    static Way Hammer(RailForm form, FoldEdge edge, EdgeStrain s, WorkLimits limits)
    {
        var widest = form.Rail.Stations.Max(t => edge.Upper ? t.Upper : t.Lower) / form.Rail.Thickness;
        var wide = s.Shrink > EdgeStrain.Unseen && widest > WorkLimits.WidestShrunk;
        var reachable = s.Stretch <= limits.Stretch && s.Shrink <= limits.Shrink && !wide;
        var weld = GapWeld(edge);
        var hours = FoldHours + FormerHours + HammerHoursPerMetrePerCent * s.WorkedLength / 1000 * 100 * Math.Max(s.Stretch, s.Shrink) + Weld(weld);
        var limit = $"the metal bears about {limits.Stretch * 100:0} % before it necks, and {limits.Shrink * 100:0} % is shrunk by hand";
        return new(WayKind.Hammer, reachable, hours, weld, 0, 0, 0,
            $"{(reachable ? "Hammer over a former" : "Hammering over a former does not reach")}: the {s.Edge} flange {Strains(s)}; {limit}{(wide ? $"; at {widest:0} thicknesses it is too wide to shrink without folds" : "")}{Corners(s)}.");
    }

    static string Notches(int n) => n == 1 ? "one V-notch" : $"{n} V-notches, each";

    static string Times(int n) => n == 1 ? "once" : $"{n} times";

    static Way Notch(FoldEdge edge, EdgeStrain s)
    {
        var plan = NotchPlan.Of(edge, s, (_, _) => true);
        var cuts = plan.Vees.Length + plan.Slits.Length;
        var weld = GapWeld(edge) + cuts * plan.Depth;
        var words = (plan.Vees.Length, plan.Slits.Length) switch
        {
            (0, 0) => "no cuts",
            (var v, 0) => $"cut {Notches(v)} {plan.VeeWidth:0.0} mm wide at the edge and {plan.Depth:0} mm deep, and weld shut",
            (0, var o) => $"slit it {Times(o)} {plan.Depth:0} mm deep; each opens {plan.SlitWidth:0.0} mm and is filled",
            var (v, o) => $"cut {Notches(v)} {plan.VeeWidth:0.0} mm wide at the edge, and weld shut; slit it {Times(o)}, each opens {plan.SlitWidth:0.0} mm and is filled; all {plan.Depth:0} mm deep",
        };
        return new(WayKind.Notch, cuts > 0, FoldHours + CutHours * cuts + Weld(weld), weld, cuts, Math.Max(plan.VeeWidth, plan.SlitWidth), plan.Depth,
            $"Relieve the {s.Edge} flange: {words}{Corners(s)}.");
    }

    static Way Separate(RailForm form, FoldEdge edge, EdgeStrain s)
    {
        var length = edge.Line.Length;
        return new(WayKind.Separate, true, PieceHours + Weld(length), length, 0, 0, 0,
            $"Make the {s.Edge} flange of its own piece {form.Rail.Thickness:0.0#} mm thick and weld it along the corner, {length:0} mm: no metal is strained.");
    }
}
