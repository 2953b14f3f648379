using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Survey;

namespace WitnessMark.FrontOffice.MeasureSample;

/// <summary>What has become of a feature, as people write it.</summary>
public static class ConditionWords
{
    /// <summary>Sound first; on a sheet it may stay empty.</summary>
    public static ImmutableArray<string> All { get; } = [.. Enum.GetValues<FeatureCondition>().Select(Of)];

    public static string Of(FeatureCondition condition) => condition.ToString().ToLowerInvariant();

    /// <summary>Null when it is none of them; an empty word is sound.</summary>
    public static FeatureCondition? Named(string? word) => word?.Trim().ToLowerInvariant() switch
    {
        null or "" => FeatureCondition.Sound,
        "rusty" => FeatureCondition.Rusted,
        var plain => All.IndexOf(plain) is >= 0 and var i ? (FeatureCondition)i : null,
    };
}
