using WitnessMark.FrontOffice.MakeToSize;

namespace WitnessMark.Cli.MakeTo;

/// <summary>Made-to sizes in words.</summary>
static class MadeToWords
{
    const int Shown = 5;

    public static void Write(TextWriter to, MakeToSizeResult result)
    {
        foreach (var m in result.Members)
        {
            if (m.Question.Label.Length > 0) to.WriteLine(m.Question.Label);
            to.WriteLine(m.Words);
            foreach (var r in m.Ranked.Where(r => r.Probability >= 0.001).Take(Shown)) to.WriteLine($"  {r.Probability,7:0.0%}  {r.Name}{Also(r.AlsoCalled)}");
            to.WriteLine($"  {m.OffList,7:0.0%}  none of the listed sizes");
            foreach (var doubt in m.Doubts.Skip(1)) to.WriteLine(doubt.Words);
            to.WriteLine();
        }
        to.WriteLine($"Origin: {string.Join(", ", result.Origins.Select(o => $"{o.Name} {o.Probability:0%}"))}.");
        foreach (var caution in result.Cautions) to.WriteLine($"! {caution}");
    }

    static string Also(IReadOnlyCollection<string> names) => names.Count == 0 ? "" : $" ({string.Join(", ", names)})";
}
