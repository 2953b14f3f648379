using WitnessMark.Maths.LeastSquares;

namespace WitnessMark.DrawingOffice.Survey.Network.Wear;

/// <summary>The same equations with the readings moved: computed − (observed + shift).</summary>
sealed class ShiftedRows(IResiduals rows, double[] shift) : IResiduals
{
    public SparseRows Jacobian => rows.Jacobian;

    public void Evaluate(ReadOnlySpan<double> x, Span<double> residuals)
    {
        rows.Evaluate(x, residuals);
        Shift(residuals);
    }

    public void Linearise(ReadOnlySpan<double> x, Span<double> residuals)
    {
        rows.Linearise(x, residuals);
        Shift(residuals);
    }

    void Shift(Span<double> residuals)
    {
        for (var r = 0; r < residuals.Length; r++) residuals[r] -= shift[r];
    }
}
