using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.Stores;
using WitnessMark.Web.Client.Outbox;

namespace WitnessMark.Web.Client.DrawingOffice.Measure;

/// <summary>The sketch of one sample, as features.</summary>
public sealed class SketchBook(Decision<SampleSketch> decision)
{
    public ImmutableArray<Feature> Features { get; private set; } = Read(decision.Row);

    public Decision<SampleSketch> Decision => decision;

    public SampleSketch Row => decision.Row;

    public void Change(ImmutableArray<Feature> features)
    {
        Features = features;
        decision.Change(decision.Row with { Features = [.. features.Select(Spelling.Written)] });
    }

    public void TakeTheirs()
    {
        decision.TakeTheirs();
        Features = Read(decision.Row);
    }

    static ImmutableArray<Feature> Read(SampleSketch sketch) => [.. sketch.Features.Select(Spelling.Read).OfType<Feature>()];
}
