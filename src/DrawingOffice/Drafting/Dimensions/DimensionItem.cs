using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Drafting.Dimensions;

public enum DimensionKind { Across, Up, Radius, Diameter, Angle }

/// <summary>One dimension on the drawing and its row in the dimension table.</summary>
/// <param name="Number">In the ring beside the figure, from 1.</param>
/// <param name="What">Plain words: which feature, from where.</param>
/// <param name="Text">The figure as drawn: the made-to size where there is one, else as measured.</param>
/// <param name="Value">As measured between <paramref name="A"/> and <paramref name="B"/>, mm; radians for an angle.</param>
/// <param name="Std">Standard uncertainty, same unit; null when it is not known.</param>
/// <param name="Wanted">Wanted tolerance, half-width, same unit.</param>
/// <param name="Auxiliary">Follows from others; written in brackets and not to be checked (ISO 129-1).</param>
/// <param name="A">Where it is taken from on the part, mm: a feature, or the centre of an arc.</param>
/// <param name="B">Where it is taken to.</param>
public sealed record DimensionItem(
    int Number, DimensionKind Kind, string What, string Text, double Value, double? Std, string? MadeTo, double? Wanted, bool Auxiliary, Vec2 A, Vec2 B);
