namespace WitnessMark.Web.Client.Shell.Works;

/// <summary>How much longer a work takes, from how far it has come.</summary>
public static class Pace
{
    /// <summary>Before this much time or share nothing is foretold: the beginning is mostly getting ready.</summary>
    const double FirstSeconds = 2, FirstShare = 0.02;

    public static TimeSpan? Left(TimeSpan spent, double share) =>
        spent.TotalSeconds < FirstSeconds || share < FirstShare ? null : spent * ((1 - Math.Min(share, 1)) / share);

    /// <summary>No finer than a person would say it.</summary>
    public static string Words(TimeSpan left) => left.TotalSeconds switch
    {
        < 10 => "a few seconds left",
        < 55 => $"about {Math.Ceiling(left.TotalSeconds / 10) * 10:0} s left",
        < 90 => "about a minute left",
        < 55 * 60 => $"about {left.TotalMinutes:0} min left",
        < 90 * 60 => "about an hour left",
        _ => $"about {left.TotalHours:0} h left",
    };
}
