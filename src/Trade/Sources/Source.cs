namespace WitnessMark.Trade;

/// <summary>How far a figure may be leaned on, strongest first.</summary>
public enum FigureGrade
{
    /// <summary>Follows from a formula or a definition that is stated with the table.</summary>
    Computed,

    /// <summary>Seen in the named source.</summary>
    Read,

    /// <summary>What the trade does; no one standard says so.</summary>
    Practice,

    /// <summary>Recalled, not seen: check it against a copy of the standard.</summary>
    Memory,
}

/// <summary>Where a figure comes from.</summary>
/// <param name="Id">Short name used in the tables.</param>
public sealed record Source(string Id, string Title, FigureGrade Grade);
