using WitnessMark.Stores.Outwork;

namespace WitnessMark.Web.Client.Stores;

/// <summary>The trades of outwork as people write them.</summary>
public static class Trades
{
    public static string Words(OutTrade trade) => trade switch
    {
        OutTrade.PowderCoating => "powder coating",
        _ => trade.ToString().ToLowerInvariant(),
    };
}
