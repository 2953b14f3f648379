namespace WitnessMark.DrawingOffice.Intent.Patterns.Search;

/// <summary>
/// How orderly a part is: of every freedom it has, which share the draughtsman tied to another feature, which he gave a listed
/// value, and which fell as it might. Not known beforehand, so the search is made under each and the readings judge. Without it
/// a plate of forty odd holes would be full of chance alignments, and a plate full of patterns would have half of them doubted.
/// Shares are common practice; they add to 1.
/// </summary>
sealed record Order(double Tied, double Listed, double Free)
{
    public static Order[] Places { get; } = [new(0.6, 0.37, 0.03), new(0.5, 0.1, 0.4), new(0.05, 0.9, 0.05), new(0.03, 0.02, 0.95)];

    /// <summary>A tenth of the sizes is left free even on an orderly part, since holes wear.</summary>
    public static Order[] Sizes { get; } = [new(0.55, 0.35, 0.1), new(0.6, 0.05, 0.35), new(0.1, 0.8, 0.1), new(0.03, 0.02, 0.95)];

    /// <summary>Logarithm of the odds of one freedom for being tied or listed against free.</summary>
    public double LogOdds(bool listed) => Math.Log((listed ? Listed : Tied) / Free);

    public static bool IsListed(PatternKind kind) => kind is PatternKind.RoundSize or PatternKind.RoundDistance;
}
