using System.Collections.Immutable;
using System.Text.Json;
using System.Text.Json.Serialization;
using WitnessMark.Stores;
using WitnessMark.Web.Client.Shell;

namespace WitnessMark.Web.Client.Tour;

/// <summary>A tour on its way.</summary>
public sealed record TourPlace(ImmutableArray<TourStop> Stops, int At)
{
    public TourStop Stop => Stops[At];
}

/// <summary>Remembers in this browser which stop of the tour a person is at.</summary>
public sealed class TourBook(PageScript page)
{
    const string Key = "wm.tour";

    TourPlace? _place;
    bool _read;

    /// <summary>Null when no tour is under way.</summary>
    public TourPlace? Place
    {
        get
        {
            if (!_read) (_place, _read) = (Kept(), true);
            return _place;
        }
    }

    public event Action? Changed;

    /// <summary>Begins at the first stop.</summary>
    /// <returns>Its address.</returns>
    public string Begin(VehicleTree van) => Go(new(TourStops.Of(van), 0));

    /// <returns>The address of the stop so many further on.</returns>
    public string Step(int by) => Place is { } p ? Go(p with { At = Math.Clamp(p.At + by, 0, p.Stops.Length - 1) }) : "";

    public void End()
    {
        (_place, _read) = (null, true);
        page.Forget(Key);
        Changed?.Invoke();
    }

    string Go(TourPlace place)
    {
        (_place, _read) = (place, true);
        page.Keep(Key, JsonSerializer.Serialize(place, TourJson.Default.TourPlace));
        Changed?.Invoke();
        return place.Stop.Path;
    }

    TourPlace? Kept()
    {
        try
        {
            return page.Kept(Key) is { } text && JsonSerializer.Deserialize(text, TourJson.Default.TourPlace) is { Stops: { IsDefaultOrEmpty: false } stops } p && p.At >= 0 && p.At < stops.Length ? p : null;
        }
        catch (JsonException)
        {
            return null;
        }
    }
}

[JsonSourceGenerationOptions(JsonSerializerDefaults.Web, IgnoreReadOnlyProperties = true, RespectNullableAnnotations = true, RespectRequiredConstructorParameters = true)]
[JsonSerializable(typeof(TourPlace))]
sealed partial class TourJson : JsonSerializerContext;
