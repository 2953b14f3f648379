using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Forming;
using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.Maths;
using WitnessMark.PlanningOffice;
using WitnessMark.Trade;

namespace WitnessMark.FrontOffice.SetBend;

/// <summary>A trial bend as read: inside radius of the tool, angle set and angle found, mm and radians.</summary>
public sealed record TrialReading(double SetRadius, double SetAngle, double FoundAngle);

/// <summary>A bend to be set on the person's own tools.</summary>
public sealed record SetBendRequest(WantedBend Wanted, Material Material)
{
    public Grain Grain { get; init; } = Grain.Across;

    /// <summary>Opening of the V, mm; null takes <see cref="BendForce.UsualOpening"/> thicknesses.</summary>
    public double? Opening { get; init; }

    /// <summary>Of a strip of the same sheet; null goes by the table's yield.</summary>
    public TrialReading? Trial { get; init; }

    /// <summary>The bend is to be made hot.</summary>
    public bool Hot { get; init; }

    public Shop Shop { get; init; } = Shop.Usual;
}

/// <summary>What to set, what force it takes, and whether the shop's tools do it.</summary>
/// <param name="ByTrial">Radius and angle on the tool by the person's own bend, which then count; null without one.</param>
/// <param name="Opening">mm.</param>
/// <param name="Force">Of the ram over a V, N, at the high end of the strength.</param>
/// <param name="Moment">To fold it, N mm.</param>
/// <param name="LeastRadius">mm; null where the elongation is not known.</param>
/// <param name="AsMildSteel">The mild steel that asks as much of a folder, mm.</param>
public sealed record SetBendResult(SetBendRequest Request, Overbend Overbend, (double Radius, double Angle)? ByTrial, double Opening, double Force, double Moment,
    double? LeastRadius, double AsMildSteel, ImmutableArray<Caution> Cautions)
{
    /// <summary>Inside radius to make the former with, mm.</summary>
    public double Radius => ByTrial?.Radius ?? Overbend.Radius.Value;

    /// <summary>Angle to bend to, from flat, radians.</summary>
    public double Angle => ByTrial?.Angle ?? Overbend.Angle.Value;
}

/// <summary>Spring-back, force and tools of one bend.</summary>
public static class SetBend
{
    public static Parsed<SetBendResult> Run(SetBendRequest request)
    {
        var (wanted, material) = (request.Wanted, request.Material);
        var over = Overbend.Of(wanted, material);
        if (over.Refusal is { } refusal) return refusal;
        (double Radius, double Angle)? byTrial = null;
        if (request.Trial is { } reading)
        {
            var trial = TrialBend.Of(reading.SetRadius, reading.SetAngle, reading.FoundAngle, wanted.Thickness);
            if (trial.Refusal is { } wrong) return wrong;
            var set = trial.Value.For(wanted.Radius, wanted.Angle);
            if (set.Refusal is { } far) return far;
            byTrial = set.Value;
        }
        var strength = material.Ultimate.High ?? material.Ultimate.Low ?? 0;
        var opening = request.Opening ?? BendForce.UsualOpening * wanted.Thickness;
        var force = BendForce.AirBend(wanted.Length, wanted.Thickness, strength, opening);
        if (force.Refusal is { } narrow) return narrow;
        var result = new SetBendResult(request, over.Value, byTrial, opening, force.Value, BendForce.FoldingMoment(wanted.Length, wanted.Thickness, strength),
            DrawingOffice.Forming.LeastRadius.Of(material, wanted.Thickness, request.Grain), Shop.AsMildSteel(wanted.Thickness, strength), []);
        return result with { Cautions = [.. SetBendCautions.Of(result)] };
    }
}
