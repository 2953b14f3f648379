using WitnessMark.DrawingOffice.Survey;
using WitnessMark.DrawingOffice.Survey.Network;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Drafting.FromPlan;

/// <summary>
/// The drawing's axes laid on a plan: origin in one corner or hole, that axis towards another feature which lies nearest to it in the sketch.
/// The part so lies as it was sketched, to 45°. Coordinates and their ± lean on these two features alone, since that is how the part will be marked out.
/// </summary>
sealed class PlanFrame
{
    readonly Plan _plan;
    readonly string _along;
    readonly Vec2 _datum;
    readonly Vec2 _u;
    readonly double _length;

    /// <param name="level">Direction of the sketch's x on the plan, radians.</param>
    public PlanFrame(Plan plan, string origin, string along, double level)
    {
        (_plan, Origin, _along) = (plan, origin, along);
        var d = plan.Of(along).At - plan.Of(origin).At;
        if (d.Length < Least) throw new RefusedException(Refusal.Of("datum", $"{origin} to {along}", "two features apart from each other are needed"));
        (_datum, _length) = (d.Unit, d.Length);
        var quarters = (int)Math.Round((level - d.Angle) / (Math.PI / 2)) & 3;
        _u = Enumerable.Range(0, quarters).Aggregate(_datum, (u, _) => u.Left);
    }

    /// <summary>mm; nearer to each other two features give no direction.</summary>
    public const double Least = 1e-6;

    public string Origin { get; }

    /// <summary>Turn of the x axis on the plan, radians.</summary>
    public double Turn => _u.Angle;

    public Vec2 Of(Vec2 onPlan)
    {
        var p = onPlan - _plan.Of(Origin).At;
        return new(p.Dot(_u), p.Dot(_u.Left));
    }

    /// <summary>
    /// Standard uncertainty of the way from one feature to another along an axis w of the drawing, mm, from the full covariance, the turn of the axes included:
    /// δ(w·p) = w·δp + (w⊥·p / L) n·δd, p between the features, d along the datum, L its length, n across it. Null where it is loose.
    /// </summary>
    public double? Std(Span span)
    {
        if (span.From is not { } from || span.To is not { } to || from == to) return null;
        if (!IsPlaced(from) || !IsPlaced(to)) return null;
        var w = span.Along.X > 0 ? _u : _u.Left;
        var p = _plan.Of(to).At - _plan.Of(from).At;
        var turn = _datum.Left * (w.Left.Dot(p) / _length);
        var rates = new SortedDictionary<int, double>();
        Add(rates, to, w);
        Add(rates, from, -w);
        Add(rates, _along, turn);
        Add(rates, Origin, -turn);
        int[] columns = [.. rates.Keys];
        double[] values = [.. rates.Values];
        // Measured along itself the datum has no ± across.
        if (values.All(v => Math.Abs(v) < 1e-12)) return 0;
        return Solver.Moves(_plan.Fit, columns, values) ? null : Math.Sqrt(Math.Max(0, _plan.Solver.Variance(_plan.Fit, columns, values)));
    }

    bool IsPlaced(string id) => _plan.Features.Any(f => f.Id == id && f.Kind != FeatureKind.Edge);

    void Add(SortedDictionary<int, double> rates, string id, Vec2 rate)
    {
        var first = _plan.Solver.Layout.First(_plan.Solver.Layout.IndexOf(id));
        rates[first] = rates.GetValueOrDefault(first) + rate.X;
        rates[first + 1] = rates.GetValueOrDefault(first + 1) + rate.Y;
    }
}
