using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.DrawingOffice.Transitions;

/// <summary>A cone or frustum, upright or leaning, laid out exactly about its point.</summary>
public static class ConeKit
{
    /// <summary>From this ratio on the point lies so far off that the triangulated skin is the better layout.</summary>
    const double NearlyTube = 0.001;

    public static Parsed<Made> Of(AskedCone asked)
    {
        if (!(asked.Height > 0) || !double.IsFinite(asked.Height)) return Refusal.Of("height", $"{asked.Height:0.###} mm", "give more than 0 mm");
        if (!(asked.Base > 0)) return Refusal.Of("base", $"{asked.Base:0.###} mm", "give a diameter of more than 0 mm");
        if (!(asked.Top >= 0)) return Refusal.Of("top", $"{asked.Top:0.###} mm", "give a diameter, or 0 for a point");
        if (Math.Abs(asked.Base - asked.Top) < NearlyTube * asked.Base) return SkinKit.Of(AsTransition(asked));
        if (Cone(asked) is not { } cone) return Refusal.Of("base and top", $"{asked.Base:0.###} and {asked.Top:0.###} mm", "give more than the thickness takes off");
        var pieces = asked.Seam.Pieces;
        var sweep = Math.Tau / pieces;
        ImmutableArray<Laid> laid = [.. Enumerable.Range(0, pieces).Select(i =>
            ConeLay.Of(pieces == 1 ? "blank" : $"half {i + 1}", cone, asked.SeamAngle + i * sweep, sweep, asked.Error))];
        var whole = pieces == 1 ? laid[0] : ConeLay.Of("whole", cone, asked.SeamAngle, Math.Tau, asked.Error);
        var refold = laid.Max(l => Flatten.Error(l.Strip, Flatten.Of(l.Strip)));
        return SheetKit.Of(asked, laid, whole.Strip, new(0, cone.Upright ? 0 : asked.Error, 0, refold), Cautions(asked, cone));
    }

    /// <summary>
    /// The cone at the developed layer; null when nothing is left of an end. An edge cut square to a wall that leans by α from the axis
    /// has its layer off the given surface by cos α of the distance in the wall.
    /// </summary>
    public static Cone? Cone(AskedCone asked)
    {
        var lean = Math.Atan2(Math.Abs(asked.Base - asked.Top) / 2, asked.Height);
        var by = asked.Offset.Length < 1e-9 * asked.Height ? asked.Layer * Math.Cos(lean) : asked.Layer;
        var (b, t) = (asked.Base / 2 + by, asked.Top == 0 ? 0 : asked.Top / 2 + by);
        if (!(b > 0 && (asked.Top == 0 || t > 0))) return null;
        // A pointed cone keeps its angle, and its point moves with the layer.
        var grown = asked.Top == 0 ? 2 * b / asked.Base : 1;
        return new(b, t, asked.Height * grown, asked.Offset * grown);
    }

    static AskedTransition AsTransition(AskedCone a) => new(a.Title, a.Thickness, new(new RoundForm(a.Base), Motion3.Identity),
        new(new RoundForm(a.Top), Motion3.Shift(new(a.Offset.X, a.Offset.Y, a.Height))))
    {
        Sizes = a.Sizes,
        Neutral = a.Neutral,
        Error = a.Error,
        Seam = a.Seam with { Place = SeamPlace.Angle, Angle = a.SeamAngle },
    };

    static IEnumerable<Caution> Cautions(AskedCone asked, Cone cone)
    {
        var tight = Math.Min(cone.Top > 0 ? cone.Top : 0, cone.Base);
        if (tight < 5 * asked.Thickness)
            yield return new(CautionKind.SharpRadius, "The small end is too tight to roll; form it over a stake or bar, or leave it a little large and dress it down.", [], tight, 5 * asked.Thickness);
    }
}
