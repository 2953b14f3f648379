namespace WitnessMark.Web.Client.Stores;

/// <summary>Small matters of writing.</summary>
public static class Sentences
{
    /// <summary>With a capital and a full stop.</summary>
    public static string Begin(string words) => words.Length == 0 ? "" : $"{char.ToUpperInvariant(words[0])}{words[1..]}{(words[^1] == '.' ? "" : ".")}";

    public static string Count(int n, string one) => $"{n} {one}{(n == 1 ? "" : "s")}";
}
