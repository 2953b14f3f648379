using System.Text.RegularExpressions;

namespace WitnessMark.Web.Client.Stores;

/// <summary>What kinds of rows are called when one was saved.</summary>
static partial class Deeds
{
    /// <summary>"ConditionSeen" as "condition seen": rows are named in words that can be read.</summary>
    public static string Name<T>() => Inner().Replace(typeof(T).Name, " $0").ToLowerInvariant();

    [GeneratedRegex("(?<=[a-z])[A-Z]")]
    private static partial Regex Inner();
}
