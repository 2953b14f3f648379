using WitnessMark.DrawingOffice.Survey.Network;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Survey.Solid.Network;

/// <summary>The adjustment of a survey in space: its layout of unknowns and its observation equations.</summary>
sealed class SolidSolver : Adjustment
{
    readonly int[][] _named;

    public SolidSolver(SolidSample sample)
        : this(sample, SolidObservations.Lever(sample))
    {
    }

    /// <param name="lever">Size of the part, mm, where no reading shows it yet.</param>
    public SolidSolver(SolidSample sample, double lever)
        : this(sample, new SolidLayout(sample, lever, SolidObservations.Turning(sample)))
    {
    }

    SolidSolver(SolidSample sample, SolidLayout layout)
        : this(sample, layout, new SolidEquations(layout, SolidObservations.Of(sample, layout)))
    {
    }

    SolidSolver(SolidSample sample, SolidLayout layout, SolidEquations equations)
        : base(equations, layout.BlockOf, [.. equations.Rows.Select(r => 1 / (r.Sigma * r.Sigma))])
    {
        (Sample, Layout, Equations) = (sample, layout, equations);
        _named = [.. equations.Rows.Select(o => SolidEquations.Named(o).SelectMany(layout.Through).Distinct().ToArray())];
        Gauges = equations.Rows.Count(o => o.Form is Form.Length or Form.Foot or Form.FrameFlat);
    }

    public SolidSample Sample { get; }

    public SolidLayout Layout { get; }

    public SolidEquations Equations { get; }

    /// <summary>Unknowns that rows without effect hold; no freedom of the part.</summary>
    public int Gauges { get; }

    /// <summary>The features that a row leans on, corners of edges included.</summary>
    public int[] Named(int row) => _named[row];

    public override int ReadingOf(int row) => Equations.Rows[row].Reading;

    public override double ValueOf(int row) => Equations.Rows[row].Value;

    public override double Sigma(int row) => Equations.Rows[row].Sigma;

    public override bool IsTestable(int row) => Equations.Rows[row] is { Reading: >= 0 } o && !Sample.Readings[o.Reading].Exact;

    protected override double[][] DatumMotions(ReadOnlySpan<double> x) => Layout.DatumMotions(x, Centre(x));

    /// <summary>Middle of all places: the datum turns about it.</summary>
    public Vec3 Centre(ReadOnlySpan<double> x)
    {
        var (sum, count) = (Vec3.Zero, 0);
        for (var i = 0; i < Layout.Features.Length; i++)
        {
            if (!Layout.HasPlace(i)) continue;
            sum += Layout.Place(i, x);
            count++;
        }
        return count == 0 ? Layout.Middle : sum / count;
    }
}
