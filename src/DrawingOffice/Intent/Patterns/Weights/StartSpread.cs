using WitnessMark.DrawingOffice.Intent.Patterns.Hypotheses;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Intent.Patterns.Weights;

/// <summary>
/// The covariance of what was meant, given the readings: that of the survey, Q, and on top of it how far each made feature
/// strays from its mark. Independent from feature to feature, so that a row of holes shows what it should: more holes, surer line.
/// </summary>
static class StartSpread
{
    public static Spread Of(Plan plan, Shape shape, Making making)
    {
        var n = shape.Count;
        var p = new double[n * n];
        for (var u = 0; u < n; u++)
        {
            var column = plan.Solver.Cofactors(plan.Fit, [u], [1]);
            for (var v = 0; v < n; v++) p[u * n + v] = column[v];
        }
        // Rounding leaves Q unsymmetric in its last digits.
        for (var u = 0; u < n; u++)
            for (var v = 0; v < u; v++) p[u * n + v] = p[v * n + u] = (p[u * n + v] + p[v * n + u]) / 2;
        foreach (var f in shape.Known) Add(p, n, f, shape, making);
        return new(n, p);
    }

    static void Add(double[] p, int n, int f, Shape shape, Making making)
    {
        var first = shape.First(f);
        void Own(int column, double std) => p[column * n + column] += std * std;
        var size = shape.SizeColumn(f) is >= 0 and var c ? Math.Abs(shape.Start[c]) : 0;
        var place = shape.Kind(f) is FeatureKind.Hole or FeatureKind.Slot ? making.Place : making.Corner;
        if (shape.Kind(f) != FeatureKind.Edge)
        {
            Own(first, place);
            Own(first + 1, place);
        }
        switch (shape.Kind(f))
        {
            case FeatureKind.Hole:
                Own(first + 2, making.Size + making.SizePerSize * size);
                break;
            case FeatureKind.Arc:
                Own(first + 2, making.Radius + making.RadiusPerSize * size);
                break;
            case FeatureKind.Slot:
                Own(first + 2, Math.Sqrt(2) * place / shape.Reach(f) * shape.Lever);
                Own(first + 3, Math.Sqrt(2) * place);
                Own(first + 4, making.Size + making.SizePerSize * size);
                break;
            case FeatureKind.Edge when shape.IsFreeEdge(f):
                // Turned about its point opposite the middle of the part, and shifted there.
                var turn = Math.Sqrt(2) * making.Corner / shape.Reach(f);
                var arm = Vec2.Polar(shape.Turn(f, shape.Start)).Dot(shape.At(f, shape.Start));
                Own(first, turn * shape.Lever);
                Own(first + 1, Math.Sqrt(making.Corner * making.Corner + arm * arm * turn * turn));
                p[first * n + first + 1] -= arm * turn * turn * shape.Lever;
                p[(first + 1) * n + first] -= arm * turn * turn * shape.Lever;
                break;
        }
    }
}
