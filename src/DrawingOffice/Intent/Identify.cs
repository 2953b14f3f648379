using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Intent.Tables;
using WitnessMark.DrawingOffice.Intent.Wear;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Intent;

/// <summary>
/// Made-to size from measured sizes, by Bayes' rule over the sizes that the trade makes things to.
/// A reading is nominal + making error (Gaussian) + one-sided wear (exponential) + coat and measuring error (Gaussian);
/// the prior is origin × share of the series × the size's share of its series, the same for sizes of every order;
/// a stated chance is kept for a size on no list. The odds are right as far as the practice and the prior are:
/// docs/guide/made-to.md says what a wrong one does to them.
/// Bad input throws <see cref="RefusedException"/>.
/// </summary>
public static class Identify
{
    public static MadeTo One(Question question, OriginPrior? prior = null, Practice? practice = null) =>
        Together([question], prior, practice).Members[0];

    /// <summary>Several questions about one vehicle. Each is answered alone given the origin; the origin is judged from all.</summary>
    public static Family Together(ImmutableArray<Question> questions, OriginPrior? prior = null, Practice? practice = null) =>
        Among([.. questions.Select(q => (q, Catalogue.Near(q, practice ?? Practice.Usual)))], prior, practice);

    /// <summary>The same over sizes of the caller's choice.</summary>
    public static Family Among(ImmutableArray<(Question Question, Shortlist Sizes)> asked, OriginPrior? prior = null, Practice? practice = null)
    {
        var (belief, habits) = ((prior ?? OriginPrior.Unknown).Checked(), (practice ?? Practice.Usual).Checked());
        var weighings = asked.Select(a => new Weighing(a.Question.Checked(), a.Sizes, belief, habits)).ToImmutableArray();
        var origins = Posterior(belief, weighings);
        return new Family(
            [.. belief.Origins.Zip(origins, (o, p) => new OriginOdds(o.Name, p)).OrderByDescending(o => o.Probability)],
            [.. weighings.Select(w => w.Told(origins))]);
    }

    static double[] Posterior(OriginPrior prior, ImmutableArray<Weighing> weighings)
    {
        var logs = prior.Origins.Select((o, i) => Math.Log(o.Weight) + weighings.Sum(w => w.LogEvidence(i))).ToArray();
        var all = LogSum.Of(logs);
        return [.. logs.Select(l => Math.Exp(l - all))];
    }
}
