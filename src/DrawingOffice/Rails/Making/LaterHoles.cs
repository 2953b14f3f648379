using System.Collections.Immutable;
using System.Globalization;
using WitnessMark.DrawingOffice.Pieces;
using WitnessMark.DrawingOffice.Sheetwork;

namespace WitnessMark.DrawingOffice.Rails;

/// <summary>A flange with the way that is taken and the cuts that go with it.</summary>
sealed record MadeFlange(FoldEdge Edge, EdgeStrain Strain, Way Way, FlangeCuts Cuts);

/// <summary>A hole that is only pricked on the blank.</summary>
/// <param name="When">It is made: "after forming".</param>
sealed record LaterHole(PlacedHole Hole, FoldEdge Edge, string When, Caution Caution)
{
    /// <summary>The spot to prick, with what is made there.</summary>
    public Witness Spot => new(Words, [Edge.Place(Hole.Along) is var p ? p.At + p.Out * Hole.Flat : default]);

    public string Words => $"{Hole.Hole.Id}: {Work} {When}";

    string Work => Hole.Hole.Shape switch
    {
        RoundHole r => $"drill ⌀{Write(r.Diameter)}",
        Slot s => $"cut the slot {Write(s.Width)} × {Write(s.Length)}",
        _ => "cut out",
    };

    static string Write(double v) => v.ToString("0.##", CultureInfo.InvariantCulture);
}

/// <summary>Finds the holes that would not come true if they were cut in the blank.</summary>
static class LaterHoles
{
    /// <summary>More than this out of round is told, mm: half the clearance of a usual hole.</summary>
    const double OutOfRound = 0.1;

    public static ImmutableArray<LaterHole> Of(IReadOnlyList<MadeFlange> made, ImmutableArray<PlacedHole> holes) =>
        [.. made.SelectMany(m => holes.Where(h => m.Edge.Owns(h.Hole.Face)).Select(h => Of(m, h)).OfType<LaterHole>())];

    static LaterHole? Of(MadeFlange m, PlacedHole hole)
    {
        foreach (var met in m.Cuts.Met)
            if (met.Hole == hole) return new(hole, m.Edge, "after the weld is dressed", Met(m, met));
        // Cuts take the strain up, and a flange of its own has none: there a hole stays as it is cut.
        if (m.Way.Kind is WayKind.Notch or WayKind.Separate) return null;
        var rim = hole.OnBlank.Edge.Flatten(0.02);
        var box = rim.Max(p => p.X) - rim.Min(p => p.X);
        var found = Math.Abs(hole.Strain) * box;
        if (!(found > OutOfRound)) return null;
        var (kind, does, ends) = hole.Strain > 0 ? (CautionKind.Stretch, "stretches", "longer") : (CautionKind.Shrink, "shrinks", "shorter");
        return new(hole, m.Edge, "after forming", new(kind,
            $"Hole {hole.Hole.Id} lies where the flange {does} {Math.Abs(hole.Strain) * 100:0.0} %: drilled in the blank it would end {found:0.0} mm {ends} than wide. Prick it, and drill it after forming.", [hole.Hole.Id], found, OutOfRound));
    }

    static Caution Met(MadeFlange m, CutHole met)
    {
        var (id, limit) = (met.Hole.Hole.Id, FlangeCuts.Clear * m.Edge.Shape!.Thickness);
        var where = met.Gap > 0 ? $"comes within {met.Gap:0.0} mm of" : "runs through";
        return new(CautionKind.Weld, $"A {(met.IsSlit ? "slit" : "V-notch")} of the {m.Edge.Name} flange {where} hole {id}: drill it after the weld is dressed, or take another way.", [id], met.Gap, limit);
    }
}
