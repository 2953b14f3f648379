using WitnessMark.Trade;

namespace WitnessMark.DrawingOffice.Intent.Tables;

/// <summary>
/// Sizes that stand in a printed list. A size holds the stretch of its list halfway to its neighbours, on the scale of the
/// logarithm; sizes that share a diameter share the stretch.
/// </summary>
static class Listed
{
    static readonly double Octave = Math.Log(2);

    public static IEnumerable<Candidate> Sizes(IEnumerable<NominalSize> list, string series) =>
        Weighed(list, s => s.Mm).Select(w => new Candidate(w.Entry.Name, series, w.Entry.Mm, w.Mass)
        {
            Source = Told(w.Entry.Source),
        });

    public static IEnumerable<Candidate> Screws(IEnumerable<ScrewThread> list, string series, Func<ScrewThread, double> core) =>
        Weighed(list, t => t.Diameter).Select(w => new Candidate(w.Entry.Name, series, w.Entry.Diameter, w.Mass)
        {
            Pitch = w.Entry.Pitch,
            Flank = w.Entry.Form.FlankAngle,
            Core = core(w.Entry),
            Source = Told(w.Entry.Source),
        });

    static string Told(Source source) => $"{source.Title} ({source.Grade.ToString().ToLowerInvariant()})";

    static IEnumerable<(T Entry, double Mass)> Weighed<T>(IEnumerable<T> list, Func<T, double> size)
    {
        var rungs = list.GroupBy(size).OrderBy(g => g.Key).ToArray();
        for (var i = 0; i < rungs.Length; i++)
        {
            var below = i > 0 ? Math.Log(rungs[i].Key / rungs[i - 1].Key) : double.NaN;
            var above = i < rungs.Length - 1 ? Math.Log(rungs[i + 1].Key / rungs[i].Key) : double.NaN;
            var stretch = (double.IsNaN(below), double.IsNaN(above)) switch
            {
                (true, true) => Octave,
                (true, false) => above,
                (false, true) => below,
                _ => (below + above) / 2,
            };
            foreach (var entry in rungs[i]) yield return (entry, Math.Min(stretch, Octave) / rungs[i].Count());
        }
    }
}
