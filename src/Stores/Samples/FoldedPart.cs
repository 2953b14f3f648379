namespace WitnessMark.Stores;

/// <summary>
/// A sample's folded part just as the person typed it, half-typed too: reading it is the drawing office's work. A decision, not a
/// reading: it may be typed anew.
/// </summary>
/// <param name="Id">The sample's id: a sample has one folded part.</param>
/// <param name="Text">Never empty, at most <see cref="Check.LargestFolded"/> bytes; null for a flat part, and once it was taken back.</param>
public sealed record FoldedPart(Guid Id, string? Text);
