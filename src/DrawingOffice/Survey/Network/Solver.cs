using WitnessMark.DrawingOffice.Survey.Network.Wear;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Survey.Network;

/// <summary>The adjustment of a flat survey: its layout of unknowns and its observation equations.</summary>
sealed class Solver : Adjustment
{
    readonly int[][] _places;

    public Solver(Sample sample)
        : this(sample, new Layout(sample, Observations.Lever(sample)))
    {
    }

    public Solver(Sample sample, Layout layout)
        : this(sample, layout, new Equations(layout, Observations.Of(sample, layout)))
    {
    }

    Solver(Sample sample, Layout layout, Equations equations)
        : base(equations, layout.BlockOf, [.. equations.Rows.Select(r => 1 / (r.Sigma * r.Sigma + r.Wear.Scale * r.Wear.Scale))])
    {
        (Sample, Layout, Equations) = (sample, layout, equations);
        _places = [.. equations.Rows.Select(o => layout.PlacesIn(o).ToArray())];
    }

    public Sample Sample { get; }

    public Layout Layout { get; }

    public Equations Equations { get; }

    /// <summary>The features with a place that a row leans on.</summary>
    public int[] Places(int row) => _places[row];

    public override int ReadingOf(int row) => Equations.Rows[row].Reading;

    public override double Sigma(int row) => Equations.Rows[row].Sigma;

    public override bool IsTestable(int row) => Equations.Rows[row] is { Reading: >= 0 } o && !Sample.Readings[o.Reading].Exact;

    public override RowWear WearOf(int row) => Equations.Rows[row].Wear;

    protected override double[][] DatumMotions(ReadOnlySpan<double> x) => Layout.DatumMotions(x, Centre(x));

    /// <summary>Middle of all places: the datum turns about it.</summary>
    Vec2 Centre(ReadOnlySpan<double> x)
    {
        var (sum, count) = (Vec2.Zero, 0);
        for (var i = 0; i < Layout.Features.Length; i++)
        {
            if (!Layout.HasPlace(i)) continue;
            sum += Layout.Place(i, x);
            count++;
        }
        return count == 0 ? sum : sum / count;
    }
}
