using WitnessMark.DrawingOffice.Survey.Solid;
using WitnessMark.Maths;
using WitnessMark.Tests;

namespace WitnessMark.DrawingOffice.Tests.Survey.Solid;

[Truth(Grade.Property, "whatever is typed is refused in a sentence or adjusted to finite numbers")]
public class NonsenseTests
{
    /// <summary>Features without sketch and readings of every kind thrown together.</summary>
    static SolidSample Thrown(Chance chance)
    {
        var kinds = Enum.GetValues<SolidKind>();
        var features = Enumerable.Range(0, 3 + chance.Below(7)).Select(i => new SolidFeature($"{(char)('A' + i)}", kinds[chance.Below(kinds.Length)])
        {
            Sketch = chance.Below(2) == 0 ? new Vec3(chance.Below(5), chance.Below(5), chance.Below(3)) : null,
        }).ToList();
        var readings = new List<SolidReading>();
        var readingKinds = Enum.GetValues<SolidReadingKind>();
        for (var tries = 0; tries < 200 && readings.Count < 14; tries++)
        {
            var kind = readingKinds[chance.Below(readingKinds.Length)];
            var condition = kind is SolidReadingKind.On or SolidReadingKind.Parallel or SolidReadingKind.Square;
            var value = condition ? 0 : kind == SolidReadingKind.Angle ? chance.Uniform(0, 3) : chance.Uniform(0, 50);
            var single = kind is SolidReadingKind.Diameter or SolidReadingKind.LengthAlongEdge;
            var reading = new SolidReading(readings.Count, kind, features[chance.Below(features.Count)].Id, single ? null : features[chance.Below(features.Count)].Id, value, condition && chance.Below(2) == 0 ? 0 : 0.02);
            try
            {
                SolidCheck.Verify(new SolidSample("n", "", [.. features], [.. readings, reading]));
                readings.Add(reading);
            }
            catch (RefusedException)
            {
                // Not a sensible one; the next may be.
            }
        }
        return new SolidSample("n", "", [.. features], [.. readings]);
    }

    /// <summary>50 throws; a hundred more showed nothing further and took two thirds of this folder's time.</summary>
    [Fact]
    public void Anything_that_is_not_refused_is_adjusted_to_finite_places()
    {
        for (var seed = 1; seed <= 50; seed++)
        {
            var plan = SolidAdjust.Solve(Thrown(new Chance((ulong)seed)), searchMirrors: seed % 5 == 0);
            Assert.All(plan.Features, f => Assert.True(double.IsFinite(f.At.Length) && double.IsFinite(f.Direction.Length) && double.IsFinite(f.Ellipsoid.Major.Length), $"seed {seed}: {f}"));
            Assert.True(SolidNext.Advise(plan, 0.1).Words.Length > 0);
            Assert.NotNull(plan.Wireframe());
        }
    }
}
