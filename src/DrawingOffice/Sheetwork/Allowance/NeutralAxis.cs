using System.Collections.Immutable;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Sheetwork;

/// <summary>A fixed neutral-axis factor: the layer at K·T from the inside keeps its length. K from 0 to 1; 0.25 to 0.5 is usual.</summary>
public sealed record NeutralAxis(double K) : BendMethod
{
    protected override Parsed<BendAllowance> Compute(double turn, double radius, double thickness)
    {
        if (!(K is >= 0 and <= 1)) return Refusal.Of("neutral-axis factor", $"{K}", "give a share of the thickness from 0 to 1, usually 0.25 to 0.5");
        if (radius == 0 && K == 0) return Refusal.Of("neutral-axis factor", "0 with no radius", "the bend would take no metal; give a radius or a factor");
        ImmutableArray<string> cautions = K is >= 0.25 and <= 0.5 ? [] : [$"a neutral-axis factor of {K:0.##} is outside the usual 0.25 to 0.5"];
        return new BendAllowance(ArcAt(turn, radius, thickness, K), null, K, $"fixed neutral axis, K = {K:0.###}", "the sheet and tool that K was found for", cautions);
    }
}
