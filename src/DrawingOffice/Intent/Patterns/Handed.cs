using System.Collections.Immutable;

namespace WitnessMark.DrawingOffice.Intent.Patterns;

/// <summary>Two features that answer one another in a left and a right hand part.</summary>
/// <param name="Apart">mm, when the mirrored second part is laid on the first.</param>
public sealed record HandedPair(string First, string Second, double Apart);

/// <summary>Whether two parts are a left and a right hand of one another.</summary>
/// <param name="Alike">The mirrored shape fits; false when the unmirrored fits better or neither does.</param>
/// <param name="ChiSquare">Of the mirrored fit, readings and making of both parts together.</param>
/// <param name="Words">One plain sentence with the worst pair.</param>
public sealed record HandedVerdict(bool Alike, ImmutableArray<HandedPair> Pairs, double ChiSquare, int Freedom, string Words);
