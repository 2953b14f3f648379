using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Intent.Words;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Intent;

/// <summary>
/// How one facet of one kind of thing comes out of the making, and how it wears. mm; radians of angles. P = pitch, D = size.
/// Made = nominal + (Offset + OffsetPerPitch·P) with standard deviation Spread + SpreadPerPitch·P + SpreadPerSize·D.
/// </summary>
/// <param name="WearSign">+1: wear makes it larger (holes). −1: smaller (pins, sheet). 0: wear does not move it.</param>
/// <param name="Scales">Mean wear when new, light, worn, badly worn.</param>
public sealed record Allowance(Subject Subject, Facet Facet, int WearSign, ImmutableArray<double> Scales)
{
    public double Offset { get; init; }
    public double OffsetPerPitch { get; init; }
    public double Spread { get; init; }
    public double SpreadPerPitch { get; init; }
    public double SpreadPerSize { get; init; }

    /// <summary>A coat lies on two faces and works against wear: it closes a hole and thickens a pin.</summary>
    public double CoatFaces => -2 * WearSign;

    public double Mean(double nominal, double pitch) => nominal + Offset + OffsetPerPitch * pitch;

    public double Std(double nominal, double pitch) => Spread + SpreadPerPitch * pitch + SpreadPerSize * nominal;
}

/// <summary>
/// Editable habits of making and wear. The figures of <see cref="Usual"/> are common practice (docs/guide/made-to.md says
/// which rule each follows); a person who knows the shop or the rust better changes them.
/// </summary>
/// <param name="Conditions">How often an unjudged place is new, light, worn, badly worn; adds to 1.</param>
/// <param name="DecisiveOdds">Odds between two sizes at which the likelier is taken as told.</param>
public sealed record Practice(ImmutableArray<Allowance> Allowances, ImmutableArray<double> Conditions, double DecisiveOdds = 20)
{
    const double Degree = Math.PI / 180;
    static readonly ImmutableArray<double> NoWear = [0, 0, 0, 0];

    public static Practice Usual { get; } = new(
        [
            // A twist drill cuts a little over its size.
            new(Subject.Hole, Facet.Size, +1, [0.01, 0.05, 0.2, 0.6]) { Offset = 0.04, Spread = 0.04, SpreadPerSize = 0.001 },
            new(Subject.Pin, Facet.Size, -1, [0.005, 0.02, 0.08, 0.3]) { Offset = -0.015, Spread = 0.015, SpreadPerSize = 0.0005 },
            // Straight lines through the middle and spread of ISO 965-1 tolerance 6g, P 0.5 to 3 mm (within 0.015 mm).
            new(Subject.ExternalThread, Facet.Size, -1, [0.01, 0.03, 0.1, 0.25]) { Offset = -0.045, OffsetPerPitch = -0.068, Spread = 0.02, SpreadPerPitch = 0.03 },
            new(Subject.ExternalThread, Facet.Core, -1, [0.01, 0.03, 0.1, 0.25]) { Offset = -0.045, OffsetPerPitch = -0.068, Spread = 0.03, SpreadPerPitch = 0.04 },
            new(Subject.ExternalThread, Facet.Pitch, 0, NoWear) { SpreadPerPitch = 0.002 },
            new(Subject.ExternalThread, Facet.Flank, 0, NoWear) { Spread = 0.5 * Degree },
            // The bore of a nut follows the tapping drill, and makers choose different drills.
            new(Subject.InternalThread, Facet.Core, +1, [0.01, 0.03, 0.1, 0.25]) { Offset = 0.04, Spread = 0.04, SpreadPerPitch = 0.05 },
            new(Subject.InternalThread, Facet.Pitch, 0, NoWear) { SpreadPerPitch = 0.002 },
            new(Subject.InternalThread, Facet.Flank, 0, NoWear) { Spread = 0.5 * Degree },
            new(Subject.Sheet, Facet.Size, -1, [0.01, 0.05, 0.15, 0.4]) { Spread = 0.01, SpreadPerSize = 0.02 },
            // Marked out and drilled: the holes wander either way, and wear has no side.
            new(Subject.HolePitch, Facet.Size, 0, NoWear) { Spread = 0.12 },
            new(Subject.Radius, Facet.Size, 0, NoWear) { Spread = 0.1, SpreadPerSize = 0.02 },
            new(Subject.Length, Facet.Size, -1, [0.01, 0.05, 0.2, 0.5]) { Spread = 0.15 },
            new(Subject.Angle, Facet.Size, 0, NoWear) { Spread = 0.5 * Degree },
        ],
        [0.25, 0.35, 0.3, 0.1]);

    /// <summary>The first allowance that fits; the usual one where the person's list has none.</summary>
    public Allowance For(Subject subject, Facet facet) =>
        Allowances.Concat(Usual.Allowances).First(a => a.Subject == subject && a.Facet == facet);

    public static bool Measurable(Subject subject, Facet facet) =>
        Usual.Allowances.Any(a => a.Subject == subject && a.Facet == facet);

    /// <summary>Throws <see cref="RefusedException"/> when a figure cannot be.</summary>
    public Practice Checked()
    {
        if (Allowances.IsDefault) throw new RefusedException(Refusal.Of("allowances", null, "a list is wanted, though it may be empty"));
        if (Conditions.IsDefault || Conditions.Length != 4 || Conditions.Any(c => !(c >= 0)) || !(Math.Abs(Conditions.Sum() - 1) < 1e-9))
            throw new RefusedException(Refusal.Of("conditions", Spelled(Conditions), "four chances that add to 1 are wanted"));
        if (!(DecisiveOdds > 1)) throw new RefusedException(Refusal.Of("decisive odds", $"{DecisiveOdds}", "they must be above 1"));
        foreach (var a in Allowances)
        {
            var field = $"{Sentences.Of(a.Subject)}, {a.Facet.ToString().ToLowerInvariant()}";
            if (a.Scales.IsDefault || a.Scales.Length != 4 || a.Scales.Any(s => !(s >= 0 && double.IsFinite(s))))
                throw new RefusedException(Refusal.Of($"{field}, wear", Spelled(a.Scales), "four wears of 0 or more are wanted"));
            if (Math.Min(a.Spread, Math.Min(a.SpreadPerPitch, a.SpreadPerSize)) < 0 || !(a.Std(1, 1) > 0 && double.IsFinite(a.Mean(1, 1) + a.Std(1, 1))))
                throw new RefusedException(Refusal.Of($"{field}, spread of making", $"{a.Spread}", "it must be above 0, and no part of it below"));
        }
        return this;
    }

    static string? Spelled(ImmutableArray<double> figures) => figures.IsDefault ? null : string.Join(" ", figures);

    /// <summary>Mean wear with its weight for each condition that the place may be in.</summary>
    public ImmutableArray<(double Weight, double Scale)> Wear(Allowance allowance, Condition condition)
    {
        if (allowance.WearSign == 0) return [(1, 0)];
        if (condition != Condition.Unknown) return [(1, allowance.Scales[(int)condition - 1])];
        return [.. Conditions.Zip(allowance.Scales)];
    }
}
