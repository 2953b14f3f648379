using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Transitions;

/// <summary>A transition between two ends anywhere in space, laid flat.</summary>
public static class SkinKit
{
    public static Parsed<Made> Of(AskedTransition asked)
    {
        var skin = Drawn(asked);
        if (skin.Refusal is { } refusal) return refusal;
        var halves = Halves.Of(skin.Value, asked.Seam);
        var whole = Triangulate.Of(skin.Value, [.. halves.SelectMany(h => h)], asked.Error);
        if (whole.Refusal is { } many) return many;
        var (laid, refold) = (ImmutableArray.CreateBuilder<Laid>(), 0.0);
        foreach (var half in halves)
        {
            // All pieces at the chord error that the whole was found to need.
            var part = halves.Length == 1 ? whole.Value : Triangulate.At(skin.Value, half, whole.Value.Chord).Value;
            var flat = Flatten.Of(part.Strip);
            refold = Math.Max(refold, Flatten.Error(part.Strip, flat));
            laid.Add(Laid.Of(halves.Length == 1 ? "blank" : $"half {laid.Count + 1}", part.Strip, flat, n => Ends(half, part.Elements[n])));
        }
        var w = whole.Value;
        return SheetKit.Of(asked, laid.ToImmutable(), w.Strip, new(w.Strip.Triangles, w.Chord, Math.Max(w.FirstShort, w.SecondShort), refold), Leaning(asked, w.Strip));
    }

    /// <summary>The skin over both ends at the layer that is developed.</summary>
    public static Parsed<Skin> Drawn(AskedTransition asked)
    {
        var (first, second) = (RimOf.End(asked.First, "first end", asked.Layer), RimOf.End(asked.Second, "second end", asked.Layer));
        if (first.Refusal is { } a) return a;
        return second.Refusal is { } b ? b : Skin.Over(first.Value, second.Value);
    }

    static bool Ends(ImmutableArray<Panel> panels, Element e) =>
        panels.Any(p => p.FirstTo == e.First && p.SecondTo == e.Second) || panels[0].FirstFrom == e.First && panels[0].SecondFrom == e.Second;

    /// <summary>Ends are moved to the developed layer in their own plane; a leaning wall moves it by less, t/2 (1 − cos lean).</summary>
    static IEnumerable<Caution> Leaning(AskedTransition asked, Strip strip)
    {
        var flattest = 1.0;
        for (var i = 0; i + 1 < strip.Rungs.Length; i++)
        {
            var (a, b) = (strip.Rungs[i], strip.Rungs[i + 1]);
            var third = b.First > a.First ? strip.First[b.First] : strip.Second[b.Second];
            var normal = (third - strip.First[a.First]).Cross(strip.Second[a.Second] - strip.First[a.First]).Unit;
            foreach (var up in new[] { asked.First.Frame.Z, asked.Second.Frame.Z }) flattest = Math.Min(flattest, normal.Cross(up).Length);
        }
        var off = Math.Abs(asked.Layer) * (1 - flattest);
        if (off > Noticed)
            yield return new(CautionKind.OutsideRange,
                $"The wall leans so far that the thickness moves an end by up to {Say.Mm(off, 2)} more than is allowed for here; give the sizes at mid-thickness if that matters.", [], off, Noticed);
    }

    /// <summary>mm; half a scriber's line.</summary>
    const double Noticed = 0.1;
}
