using System.Text;
using BenchmarkDotNet.Attributes;
using WitnessMark.Stores;
using WitnessMark.Stores.Intake;

namespace WitnessMark.Bench;

/// <summary>A vehicle of 5,000 parts: reading the typed list, and searching it by misspelt words; a plain scan stands beside the search.</summary>
public class StoresBench
{
    const int Parts = 5000;

    static readonly VehicleTree Empty = new(new(new(Guid.NewGuid(), "van", "", "", null, ""), 1), [], [], [], []);

    byte[] _list = [];
    PartIndex _index = PartIndex.Of([]);
    PartWords[] _words = [];

    [GlobalSetup]
    public void MakeReady()
    {
        string[] names = ["front spring", "rear bracket", "brake drum", "shackle pin", "wiring clip", "door hinge", "cross shaft"];
        _list = Encoding.UTF8.GetBytes("system,assembly,part,reference,hand,quantity,condition\n"
            + string.Concat(Enumerable.Range(0, Parts).Select(i => $"System {i % 12},Assembly {i % 90},{names[i % 7]} {i},R-{i},,{1 + i % 4},as found\n")));
        var changes = ListIntake.Changes(ReadList(), Empty);
        _words = [.. changes.Parts.Select(p => new PartWords(p.Row, "Engine"))];
        _index = PartIndex.Of(_words);
    }

    [Benchmark]
    public int Import() => ListIntake.Changes(ReadList(), Empty).Count;

    [Benchmark]
    public int Index() => PartIndex.Of(_words).Find("spring").Length;

    [Benchmark]
    public int Search() => _index.Find("frnot sprngs brakket").Length;

    [Benchmark(Baseline = true)]
    public int PlainScan() => _words.Count(w => w.Part.Name.Contains("front spring", StringComparison.OrdinalIgnoreCase));

    ListPreview ReadList() => ListReader.Preview(_list, Empty, new(), new DateOnly(2031, 5, 4)).GetAwaiter().GetResult();
}
