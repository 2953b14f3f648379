using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Survey.Network.Wear;

namespace WitnessMark.DrawingOffice.Survey.Network;

/// <summary>From readings to observation equations and weights.</summary>
static class Observations
{
    /// <summary>
    /// An exact condition gets this share of the least ± of the survey. Cause: small enough that the condition is kept to two
    /// thousandths of any reading's ± while it costs the ± no more than about 4e-7 of themselves with ordinary instruments
    /// (measured against a Lagrange solution; 6e-5 with a micrometer, a tape and conditions in one survey, whose squared weights lie 1e11 apart).
    /// </summary>
    const double ExactShare = 5e-4;

    public static ImmutableArray<Observed> Of(Sample sample, Layout layout)
    {
        var rows = ImmutableArray.CreateBuilder<Observed>();
        var least = sample.Readings.Where(r => !r.Exact && !IsAngle(r.Kind)).Select(r => r.Sigma).DefaultIfEmpty(0.02).Min();
        double ExactSigma(ReadingKind kind) => ExactShare * (IsAngle(kind) ? least / layout.Lever : least);

        var rules = new WearRules(sample, layout);
        var opposite = Enumerable.Range(0, layout.Features.Length).FirstOrDefault(layout.HasPlace);
        foreach (var r in sample.Readings)
        {
            var wear = rules.Of(r);
            var sigma = r.Exact ? ExactSigma(r.Kind) : wear.Spread > 0 ? double.Hypot(r.Sigma, wear.Spread) : r.Sigma;
            var from = layout.IndexOf(r.From);
            if (r.Kind == ReadingKind.Picked)
            {
                var frame = layout.FrameAt(layout.Frames.IndexOf(r.Frame));
                rows.Add(new Observed(r.Kind, from, frame, r.Value, sigma, r.Index, 0) { Wear = wear });
                rows.Add(new Observed(r.Kind, from, frame, r.ValueY, sigma, r.Index, 1) { Wear = wear });
                continue;
            }
            var to = r.To is null ? -1 : layout.IndexOf(r.To);
            rows.Add(new Observed(r.Kind, from, to, r.Value, sigma, r.Index, r.Kind == ReadingKind.AcrossEdges ? opposite : 0) { Wear = wear });
        }
        for (var k = 0; k < layout.Frames.Length; k++)
            if (sample.Frames.FirstOrDefault(f => f.Name == layout.Frames[k] && f.ScaleStd > 0) is { } scaled)
                rows.Add(new Observed(ReadingKind.Picked, -1, layout.FrameAt(k), 0, scaled.ScaleStd * layout.Lever, -1, 2));
        for (var i = 0; i < layout.Features.Length; i++)
            if (layout.Features[i] is { Kind: FeatureKind.Arc, From: { } a, To: { } b })
            {
                var sigma = ExactSigma(ReadingKind.On);
                rows.Add(new Observed(ReadingKind.On, layout.IndexOf(a), i, 0, sigma, -1, 0));
                rows.Add(new Observed(ReadingKind.On, layout.IndexOf(b), i, 0, sigma, -1, 0));
            }
        return rows.ToImmutable();
    }

    public static bool IsAngle(ReadingKind kind) => kind is ReadingKind.AngleBetweenEdges or ReadingKind.Parallel or ReadingKind.Square;

    public static bool IsCondition(ReadingKind kind) => kind is ReadingKind.On or ReadingKind.Parallel or ReadingKind.Square or ReadingKind.Tangent;

    /// <summary>The size of the part as the readings and the sketch show it, mm.</summary>
    public static double Lever(Sample sample)
    {
        double lever = 1;
        foreach (var r in sample.Readings)
            if (!IsAngle(r.Kind)) lever = Math.Max(lever, Math.Max(Math.Abs(r.Value), Math.Abs(r.ValueY)));
        return lever;
    }
}
