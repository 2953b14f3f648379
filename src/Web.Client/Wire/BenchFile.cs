using System.Collections.Immutable;
using WitnessMark.Stores;

namespace WitnessMark.Web.Client.Wire;

/// <summary>Everything the measuring page needs of one sample, as the records stand.</summary>
/// <param name="Sketch">Version 0 and no features when nobody has sketched it yet.</param>
/// <param name="Folded">Version 0 and no text when nobody has typed one yet.</param>
public sealed record BenchFile(
    Versioned<PartSample> Sample, Versioned<SampleSketch> Sketch, Versioned<FoldedPart> Folded, ReadingHistory History, ImmutableArray<OwnedInstrument> Instruments);

/// <summary>A row to save and the version it was built on.</summary>
public sealed record Saving<T>(T Row, int BasedOn);

/// <summary>How many of the rows sent were new. Rows sent again are recorded once.</summary>
public sealed record Recorded(int New);

/// <summary>The demonstration vehicle, and what of it was new.</summary>
public sealed record DemoLoaded(Guid Vehicle, string Name, int NewRows, int NewReadings, int NewJobs);

/// <summary>Why a request was not done, in one sentence; nothing was changed.</summary>
public sealed record Refused(string Refusal);
