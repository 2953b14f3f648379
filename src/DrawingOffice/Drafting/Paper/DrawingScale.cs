using System.Collections.Immutable;

namespace WitnessMark.DrawingOffice.Drafting.Paper;

/// <summary>Drawn size to true size; one of the scales that ISO 5455 recommends.</summary>
public readonly record struct DrawingScale(int Drawn, int True)
{
    public static DrawingScale Full { get; } = new(1, 1);

    /// <summary>Largest first. Below 1:10000 nothing made of metal in a shed is drawn.</summary>
    public static ImmutableArray<DrawingScale> Recommended { get; } =
    [
        new(50, 1), new(20, 1), new(10, 1), new(5, 1), new(2, 1), Full,
        new(1, 2), new(1, 5), new(1, 10), new(1, 20), new(1, 50), new(1, 100), new(1, 200), new(1, 500),
        new(1, 1000), new(1, 2000), new(1, 5000), new(1, 10000),
    ];

    /// <summary>mm on paper for one mm of the part.</summary>
    public double Factor => (double)Drawn / True;

    public override string ToString() => $"{Drawn}:{True}";

    /// <summary>
    /// The scales worth trying, best first: full size, or for a part under 40 mm the largest enlargement that stays under 80 mm on paper,
    /// then smaller and smaller.
    /// </summary>
    /// <param name="longest">The part's longer side, mm, positive.</param>
    public static IEnumerable<DrawingScale> Worth(double longest) =>
        Recommended.SkipWhile(s => s.Factor > 1 && (longest >= 40 || longest * s.Factor > 80));
}
