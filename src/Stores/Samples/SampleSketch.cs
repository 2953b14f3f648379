using System.Collections.Immutable;

namespace WitnessMark.Stores;

/// <summary>Where the features of a sample were roughly put by hand. A decision, not a reading: it may be redrawn.</summary>
/// <param name="Id">The sample's id: a sample has one sketch.</param>
public sealed record SampleSketch(Guid Id, ImmutableArray<SketchedFeature> Features);

/// <summary>One feature as sketched; nothing but the id and kind is needed.</summary>
/// <param name="Kind">Point, hole, slot, edge or arc, as the reading sheet writes it.</param>
/// <param name="From">First corner of an edge, first end of an arc; empty for others.</param>
/// <param name="X">mm, to the right.</param>
/// <param name="Y">mm, up.</param>
/// <param name="Turn">Radians from x.</param>
/// <param name="Size">Diameter, radius or slot width, mm.</param>
/// <param name="Length">Between a slot's end centres, mm.</param>
public sealed record SketchedFeature(
    string Id, string Kind, string From, string To, double? X, double? Y, double? Turn, double? Size, double? Length)
{
    /// <summary>Worn, rusted, bent or repaired, as the reading sheet writes it; null for a sound one.</summary>
    public string? Condition { get; init; }

    /// <summary>How much metal is about gone where it is read (bent: how far it may be off, either way), mm; null for the usual.</summary>
    public double? Wear { get; init; }
}

/// <summary>An instrument on the person's own list, mm (radians where it reads angles).</summary>
/// <param name="Resolution">Smallest step read, full width.</param>
/// <param name="StatedError">Largest error stated, half-width.</param>
/// <param name="Repeatability">Spread of single repeated readings, one standard deviation.</param>
public sealed record OwnedInstrument(
    Guid Id, string Name, double Resolution, double StatedError, double Repeatability, bool ReadsAngle);
