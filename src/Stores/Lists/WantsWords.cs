namespace WitnessMark.Stores;

/// <summary>What both forms of a wants list say alike.</summary>
static class WantsWords
{
    public static string Of(WantedAs wanted) => wanted switch
    {
        WantedAs.New => "new",
        WantedAs.SecondHand => "second-hand",
        _ => "new or second-hand",
    };

    /// <summary>Text on one line, without signs that do not print.</summary>
    public static string Clean(string text) =>
        string.Concat(text.ReplaceLineEndings(" ").Select(c => char.IsControl(c) ? ' ' : c)).Trim();
}
