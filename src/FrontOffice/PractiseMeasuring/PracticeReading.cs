using System.Collections.Immutable;

namespace WitnessMark.FrontOffice.PractiseMeasuring;

/// <summary>A reading of a practice sheet as the person wrote it; spelled as on a reading sheet.</summary>
/// <param name="Kind"><see cref="CheckLine"/> for a check line: from is across or up, to its length as printed.</param>
/// <param name="Instrument">An instrument's name, or a ±.</param>
public sealed record PracticeReading(string Kind, string From, string To, string Value, string Instrument)
{
    public const string CheckLine = "check line";

    public bool IsCheck => string.Equals(Kind.Trim(), CheckLine, StringComparison.OrdinalIgnoreCase);

    /// <summary>Whether both measure the same thing.</summary>
    public bool Same(string kind, string from, string to) => Eq(Kind, kind) && Eq(From, from) && Eq(To, to);

    static bool Eq(string a, string b) => string.Equals(a.Trim(), b.Trim(), StringComparison.OrdinalIgnoreCase);
}

/// <summary>A sheet and what was read of it so far.</summary>
public sealed record PracticeRequest(int Number, ImmutableArray<PracticeReading> Readings);

/// <summary>A reading that is wanted, in the order of working.</summary>
/// <param name="About">Roughly, with its unit, off a rough sketch: it gives nothing away.</param>
/// <param name="Words">What to measure, from where to where.</param>
/// <param name="Read">How often it has been read.</param>
public sealed record PracticeStep(int Number, string Kind, string From, string To, string About, string Words, int Read)
{
    public bool IsCheck => Kind == PracticeReading.CheckLine;
}
