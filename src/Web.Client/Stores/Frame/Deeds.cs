using System.Text.RegularExpressions;
using WitnessMark.Stores.ComingApart;
using WitnessMark.Stores.Judging;
using WitnessMark.Stores.Orders;
using WitnessMark.Stores.Outwork;
using WitnessMark.Stores.Photographs;
using WitnessMark.Stores.Places;
using WitnessMark.Stores.Tags;

namespace WitnessMark.Web.Client.Stores;

/// <summary>What kinds of rows are called when one was saved.</summary>
static partial class Deeds
{
    static readonly Dictionary<Type, string> s_names = new()
    {
        [typeof(Moved)] = "where it lies",
        [typeof(CameOff)] = "how it came off",
        [typeof(PutBack)] = "that it is back on",
        [typeof(MustPrecede)] = "what must come before",
        [typeof(ConditionSeen)] = "its condition",
        [typeof(RouteChosen)] = "its route",
        [typeof(GivenBack)] = "that it has gone back",
        [typeof(ConsignmentReturn)] = "what came back",
        [typeof(Consignment)] = "the box",
        [typeof(PictureTaken)] = "a picture",
        [typeof(TagCode)] = "a tag",
    };

    /// <summary>Others by their own name, "RateOfExchange" as "rate of exchange".</summary>
    public static string Name<T>() => s_names.TryGetValue(typeof(T), out var name) ? name : Inner().Replace(typeof(T).Name, " $0").ToLowerInvariant();

    [GeneratedRegex("(?<=[a-z])[A-Z]")]
    private static partial Regex Inner();
}
