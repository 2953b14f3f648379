using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Intent;

namespace WitnessMark.FrontOffice.MakeToSize;

/// <summary>Where a vehicle may come from, as a person says it.</summary>
public static class Origins
{
    public static ImmutableArray<(string Name, OriginPrior Prior)> All { get; } =
    [
        ("unknown", OriginPrior.Unknown),
        ("british", OriginPrior.BritishToAbout1950),
        ("british-unified", OriginPrior.BritishUnified),
        ("american", OriginPrior.NorthAmerican),
        ("metric", OriginPrior.ContinentalOrJapanese),
        ("cycle", OriginPrior.CycleOrMotorcycle),
    ];

    /// <summary>Null when there is none of that name.</summary>
    public static OriginPrior? Named(string name) => All.FirstOrDefault(o => o.Name == name).Prior;
}
