using Microsoft.AspNetCore.Components;

namespace WitnessMark.Web.Client.Shell.Ways;

/// <summary>Where the person is, and the vehicle that was last in hand: offices lead to it.</summary>
public sealed class Whereabouts(NavigationManager navigation, PageScript page)
{
    const string Key = "wm.planning.vehicle";

    /// <summary>The page's address, relative to the app, without what follows a #.</summary>
    public string Here => navigation.ToBaseRelativePath(navigation.Uri).Split('#')[0];

    public Spot Spot => Spot.Of(Here);

    /// <summary>The vehicle of the page, else the one last in hand; null when there was none.</summary>
    public Guid? Vehicle => Spot.Vehicle ?? (Guid.TryParse(page.Kept(Key), out var kept) ? kept : null);

    public void Remember(Guid vehicle) => page.Keep(Key, vehicle.ToString());

    /// <summary>The page's vehicle is the one in hand from now on.</summary>
    public void Remember()
    {
        if (Spot.Vehicle is { } vehicle && page.Kept(Key) != vehicle.ToString()) Remember(vehicle);
    }
}
