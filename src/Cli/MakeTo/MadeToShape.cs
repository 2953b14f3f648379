using WitnessMark.DrawingOffice.Intent;
using WitnessMark.FrontOffice.MakeToSize;

namespace WitnessMark.Cli.MakeTo;

/// <summary>Made-to sizes as JSON: mm and radians.</summary>
static class MadeToShape
{
    public static object Of(MakeToSizeResult result) => new
    {
        Origins = result.Origins.Select(o => new { o.Name, o.Probability }),
        Items = result.Members.Select(Of),
        result.Cautions,
    };

    static object Of(MadeTo m) => new
    {
        Item = m.Question.Label,
        What = m.Question.Subject.ToString(),
        m.Words,
        m.Told,
        Candidates = m.Ranked.Select(r => new
        {
            r.Name,
            r.AlsoCalled,
            r.Candidate.Series,
            r.Candidate.Size,
            r.Candidate.Pitch,
            r.Candidate.Source,
            r.Probability,
            Wear = r.Wear.Select(w => new { w.Value, w.Std }),
            r.Tail,
        }),
        m.OffList,
        OffListSize = new { m.OffListSize.Value, m.OffListSize.Std },
        Doubts = m.Doubts.Select(d => new
        {
            d.First,
            d.Second,
            d.Odds,
            d.Words,
            d.MoreItems,
            Deciders = d.Deciders.Select(x => new { Facet = x.Facet.ToString().ToLowerInvariant(), x.Difference, x.NeededStd, x.Instrument, x.Std, x.Chance, ExpectedOdds = Finite(x.ExpectedOdds), x.Words }),
        }),
        m.Cautions,
    };

    static double? Finite(double odds) => double.IsFinite(odds) ? odds : null;
}
