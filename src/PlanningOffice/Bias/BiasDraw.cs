using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.PlanningOffice.Futures;

namespace WitnessMark.PlanningOffice;

/// <summary>
/// Draws, future by future, how far the guesses of each group of jobs are out: first the scales, then the effects of all
/// kinds and systems together. One worker's; allocates nothing; takes the same count of normals whatever is drawn.
/// </summary>
public sealed class BiasDraw
{
    readonly BiasModel _model;
    readonly double[] _cumulative;
    readonly double[] _z;
    readonly double[] _effects;
    readonly double[] _unseen;
    readonly (int Kind, int System, int Unseen)[] _groups;

    internal BiasDraw(BiasModel model, ImmutableArray<PaceGroup> groups)
    {
        _model = model;
        var sum = 0.0;
        _cumulative = [.. model.Points.Select(p => sum += p.Weight)];
        (_z, _effects) = (new double[model.Effects], new double[model.Effects]);
        var unseen = groups.Select(g => g.System).Distinct().Where(s => model.Place(s) == 0).ToList();
        _unseen = new double[unseen.Count];
        _groups = [.. groups.Select(g => (BiasModel.Place(g.Kind), model.Place(g.System), unseen.IndexOf(g.System)))];
    }

    /// <summary>Fills ln(factor) of each group, its jobs' own scatter left out, and gives the standard deviation of that scatter.</summary>
    /// <param name="logs">One for each group.</param>
    public double Into(Chance chance, Span<double> logs)
    {
        var at = Array.BinarySearch(_cumulative, chance.Uniform());
        var (_, scales, fit) = _model.Points[Math.Min(at < 0 ? ~at : at + 1, _cumulative.Length - 1)];
        for (var i = 0; i < _z.Length; i++) _z[i] = chance.Normal();
        for (var i = 0; i < _unseen.Length; i++) _unseen[i] = scales.System * chance.Normal();
        fit.Effects(_z, _effects);
        for (var g = 0; g < _groups.Length; g++)
        {
            var (kind, system, unseen) = _groups[g];
            logs[g] = _model.Centre + _effects[0] + _effects[kind] + (system > 0 ? _effects[system] : _unseen[unseen]);
        }
        return scales.Job;
    }
}
