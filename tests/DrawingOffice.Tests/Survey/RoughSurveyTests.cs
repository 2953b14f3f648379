using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.Maths;
using WitnessMark.Tests;

namespace WitnessMark.DrawingOffice.Tests.Survey;

/// <summary>Whatever a person enters halfway through an evening must give a plan or a sentence, never a crash.</summary>
[Truth(Grade.Property, "no input may crash, hang or give NaN")]
public class RoughSurveyTests
{
    static readonly ReadingKind[] Kinds = Enum.GetValues<ReadingKind>();

    [Fact]
    public void Half_finished_surveys_give_a_plan_or_a_sentence()
    {
        var (plans, refusals) = (0, 0);
        for (ulong seed = 1; seed <= 1500; seed++)
        {
            var sample = Random(new Chance(seed));
            try
            {
                var plan = Adjust.Solve(sample);
                plans++;
                foreach (var f in plan.Believed.Features) Assert.True(double.IsFinite(f.At.X) && double.IsFinite(f.At.Y), $"seed {seed}: {f.Id} at {f.At}");
                foreach (var r in plan.Readings) Assert.True(double.IsFinite(r.Residual) && r.RedundancyNumber is >= 0 and <= 1, $"seed {seed}: reading {r.Index}");
                foreach (var d in plan.Distances()) Assert.True(double.IsFinite(d.Std) && d.Std >= 0, $"seed {seed}: {d}");
                _ = Next.Advise(plan.Believed, 0.05);
            }
            catch (RefusedException refused)
            {
                refusals++;
                Assert.EndsWith(".", refused.Message);
            }
            catch (Exception e) when (e is not Xunit.Sdk.IAssertionException)
            {
                Assert.Fail($"seed {seed}: {e}");
            }
        }
        Assert.True(plans > 1000 && refusals > 100, $"{plans} plans, {refusals} refusals");
    }

    static Sample Random(Chance chance)
    {
        var features = ImmutableArray.CreateBuilder<Feature>();
        var count = chance.Below(7);
        for (var i = 0; i < count; i++)
        {
            var kind = (FeatureKind)chance.Below(5);
            var corners = Enumerable.Range(0, i).Where(k => features[k].Kind is FeatureKind.Point or FeatureKind.Hole).Select(k => features[k].Id).ToList();
            var between = kind is FeatureKind.Edge or FeatureKind.Arc && corners.Count >= 2 && chance.Below(2) == 0;
            features.Add(new Feature($"F{i}", kind)
            {
                Sketch = chance.Below(3) == 0 ? null : chance.Below(6) == 0 ? Vec2.Zero : new Vec2(chance.Uniform(0, 100), chance.Uniform(0, 100)),
                From = between ? corners[0] : null,
                To = between ? corners[^1] : null,
            });
        }
        var readings = ImmutableArray.CreateBuilder<Reading>();
        for (var i = 0; i < (count == 0 ? 0 : chance.Below(16)); i++)
        {
            var kind = Kinds[chance.Below(Kinds.Length)];
            var (from, to) = (features[chance.Below(count)], features[chance.Below(count)]);
            var condition = kind >= ReadingKind.On;
            var sample = new Reading(readings.Count, kind, from.Id, to.Id, condition ? 0 : kind == ReadingKind.AngleBetweenEdges ? chance.Uniform(0, 3) : chance.Uniform(0, 120), condition && chance.Below(2) == 0 ? 0 : 0.02);
            // Most readings are made to fit what they name, so that plans and not only refusals come out.
            readings.Add(Single(kind) ? sample with { To = null } : sample);
        }
        var wanted = readings.Where(r => chance.Below(20) == 0 || Fits(r, [.. features])).Select((r, i) => r with { Index = i });
        return new Sample("rough", "", features.ToImmutable(), [.. wanted]);
    }

    static bool Single(ReadingKind kind) => kind is ReadingKind.LengthAlongEdge or ReadingKind.Diameter or ReadingKind.SlotWidth or ReadingKind.SlotLength or ReadingKind.Radius or ReadingKind.Chord or ReadingKind.Rise or ReadingKind.Picked;

    static bool Fits(Reading reading, ImmutableArray<Feature> features)
    {
        try
        {
            SampleCheck.Verify(new Sample("one", "", features, [reading with { Index = 0 }]));
            return true;
        }
        catch (RefusedException)
        {
            return false;
        }
    }
}
