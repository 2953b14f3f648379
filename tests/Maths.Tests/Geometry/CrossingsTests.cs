using CsCheck;
using WitnessMark.Maths.Geometry;
using WitnessMark.Tests;

namespace WitnessMark.Maths.Tests.Geometry;

public class CrossingsTests
{
    [Fact]
    public void A_bow_tie_crosses_once_in_its_middle()
    {
        var crossing = Assert.Single(Crossings.Of([new(0, 0), new(10, 10), new(10, 0), new(0, 10)]));
        Assert.Equal(5, crossing.At.X, 1e-12);
        Assert.Equal(5, crossing.At.Y, 1e-12);
    }

    [Fact]
    public void Sound_outlines_have_none()
    {
        Assert.Empty(Crossings.Of([new(0, 0), new(10, 0), new(10, 10), new(5, 2), new(0, 10)]));
        // Corners in line with their neighbours are no crossing.
        Assert.Empty(Crossings.Of([new(0, 0), new(5, 0), new(10, 0), new(10, 10)]));
    }

    [Fact]
    public void Touching_and_folding_back_count()
    {
        Assert.NotEmpty(Crossings.Of([new(0, 0), new(10, 0), new(10, 10), new(5, 0), new(0, 10)]));
        Assert.NotEmpty(Crossings.Of([new(0, 0), new(10, 0), new(4, 0), new(4, 10)]));
    }

    [Fact]
    [Truth(Grade.SecondImplementation, "every pair of sides compared")]
    public void The_sweep_finds_what_comparing_all_pairs_finds()
    {
        Gen.Select(Gen.ULong, Gen.Int[4, 25]).Sample((seed, n) =>
        {
            // Evenly spread corners: none lies within the touching distance of a side by chance.
            var chance = new Chance(seed);
            var points = Enumerable.Range(0, n).Select(_ => new Vec2(chance.Uniform(0, 100), chance.Uniform(0, 60))).ToArray();
            var expected = new HashSet<(int, int)>();
            for (var i = 0; i < n; i++)
                for (var j = i + 2; j < n; j++)
                    if (!(i == 0 && j == n - 1) && Plane2.Cross(points[i], points[(i + 1) % n], points[j], points[(j + 1) % n])) expected.Add((i, j));
            Assert.Equal(expected.Order(), Crossings.Of(points, int.MaxValue).Select(c => (c.First, c.Second)).Distinct().Order());
        }, iter: 500);
    }
}
