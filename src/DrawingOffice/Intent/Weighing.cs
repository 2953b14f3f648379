using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Intent.Wear;
using WitnessMark.DrawingOffice.Intent.Words;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Intent;

/// <summary>One question weighed against its shortlist, separately for each origin.</summary>
sealed class Weighing
{
    const double LeastProbability = 1e-6;

    readonly Question _question;
    readonly Shortlist _sizes;
    readonly Practice _practice;
    readonly ImmutableArray<Evidence> _evidence;
    readonly double[] _logLikelihood;
    readonly double _logOffList;
    readonly Uncertain _offListSize;
    readonly ImmutableArray<string> _origins;

    // For each origin: logarithm of prior × likelihood of each size, and of their sum with the off-list part.
    readonly double[][] _logJoint;
    readonly double[] _logEvidence;

    public Weighing(Question question, Shortlist sizes, OriginPrior prior, Practice practice)
    {
        (_question, _sizes, _practice) = (question, sizes, practice);
        _origins = [.. prior.Origins.Select(o => o.Name)];
        _evidence = Evidence.Of(question, practice);
        _logLikelihood = [.. sizes.Candidates.Select(c => _evidence.Sum(e => e.LogLikelihood(c)))];
        var offList = _evidence.Select(e => e.OffList(TypicalPitch())).ToArray();
        _logOffList = Math.Log(prior.OffList) + offList.Sum(o => o.Log);
        _offListSize = offList[_evidence.IndexOf(_evidence.First(e => e.Facet == question.Principal))].Nominal;
        _logJoint = [.. prior.Origins.Select(o => LogJoint(o, prior))];
        _logEvidence = [.. _logJoint.Select(j => LogSum.Of(j.Append(_logOffList)))];
    }

    public double LogEvidence(int origin) => _logEvidence[origin];

    /// <param name="origins">Probability of each origin after all evidence of the family.</param>
    public MadeTo Told(double[] origins)
    {
        var ranked = Rank(origins);
        var offList = origins.Select((p, o) => p * Math.Exp(_logOffList - _logEvidence[o])).Sum();
        var doubts = Decide.Between(_question, ranked, _evidence, _practice, (a, b) => ByOrigin(origins, a, b));
        var told = new MadeTo(_question, ranked, offList, _offListSize, doubts, Decide.Next(doubts), Cautions.For(_question, ranked, offList), "");
        return told with { Words = Sentences.Verdict(told) };
    }

    double[] LogJoint(Origin origin, OriginPrior prior)
    {
        var weights = _sizes.Series.ToDictionary(s => s, s => prior.Weight(origin, s, _sizes.Series));
        return [.. _sizes.Candidates.Select((c, i) => _logLikelihood[i] + Math.Log((1 - prior.OffList) * weights[c.Series] * c.Mass))];
    }

    ImmutableArray<Ranked> Rank(double[] origins)
    {
        var probability = _sizes.Candidates.Select((_, c) => origins.Select((p, o) => p * Math.Exp(_logJoint[o][c] - _logEvidence[o])).Sum());
        var found = new List<(Candidate Candidate, List<string> Also, double Probability)>();
        foreach (var (candidate, p) in _sizes.Candidates.Zip(probability).Where(x => x.Second > LeastProbability).OrderByDescending(x => x.Second))
        {
            var known = found.FindIndex(f => f.Candidate.SameAs(candidate));
            if (known < 0) found.Add((candidate, [], p));
            else
            {
                found[known].Also.Add(candidate.Name);
                found[known] = found[known] with { Probability = found[known].Probability + p };
            }
        }
        return [.. found.OrderByDescending(f => f.Probability).Select(f => new Ranked(f.Candidate, [.. f.Also], f.Probability,
            [.. _evidence.SelectMany(e => e.Wear(f.Candidate))], _evidence.Min(e => e.Tail(f.Candidate))))];
    }

    ImmutableArray<(OriginOdds, double)> ByOrigin(double[] origins, Ranked first, Ranked second)
    {
        double Log(int origin, Ranked size) => LogSum.Of(_sizes.Candidates.Index().Where(c => c.Item.SameAs(size.Candidate)).Select(c => _logJoint[origin][c.Index]));
        return [.. _origins.Select((name, o) => (new OriginOdds(name, origins[o]), Sentences.Bounded(Math.Exp(Log(o, first) - Log(o, second)))))];
    }

    // What a making allowance that goes by pitch is to use where no listed thread stands behind it.
    double TypicalPitch()
    {
        if (_question.Subject is not (Subject.ExternalThread or Subject.InternalThread)) return 0;
        var measured = _question.Measurements.Where(m => m.Facet == Facet.Pitch).Select(m => m.Value.Value).ToArray();
        return measured.Length > 0 ? measured.Average() : 0.15 * _question.Measurements.First(m => m.Facet == _question.Principal).Value.Value;
    }
}
