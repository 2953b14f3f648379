using System.Collections.Immutable;
using WitnessMark.Maths;

namespace WitnessMark.Stores.Places;

/// <summary>Where things lie, by the last time each was put down.</summary>
public sealed class WhereIs
{
    readonly ImmutableDictionary<Guid, Place> _places;
    readonly ImmutableDictionary<Guid, Moved> _last;

    /// <param name="moves">Those that stand, in the order they arrived: of two with the same time the later arrival counts.</param>
    public WhereIs(IEnumerable<Place> places, IEnumerable<Moved> moves)
    {
        _places = places.ToImmutableDictionary(p => p.Id);
        _last = moves.GroupBy(m => m.PartId).ToImmutableDictionary(g => g.Key, g => g.OrderBy(m => m.At).Last());
    }

    /// <summary>The last that was said of a part; null when nobody has.</summary>
    public Moved? Last(Guid part) => _last.GetValueOrDefault(part);

    /// <summary>The parts in a place, or in one inside it.</summary>
    public IEnumerable<Guid> PartsIn(Guid place) =>
        _last.Values.Where(m => m.PlaceId is { } at && Path(at).Any(p => p.Id == place)).Select(m => m.PartId);

    /// <summary>From the outermost place inwards. A ring of places, which <see cref="WrongIn"/> refuses, is gone round once.</summary>
    public ImmutableArray<Place> Path(Guid place)
    {
        var path = new List<Place>();
        for (var at = _places.GetValueOrDefault(place); at is not null && !path.Contains(at); at = at.Inside is { } outer ? _places.GetValueOrDefault(outer) : null)
            path.Insert(0, at);
        return [.. path];
    }

    /// <summary>One plain sentence.</summary>
    public string Words(Guid part) => Last(part) switch
    {
        null => "Nobody has said where it is.",
        { PlaceId: null } m => $"Taken out on {m.At:yyyy-MM-dd} and not put down anywhere known{Note(m)}.",
        { PlaceId: { } at } m when Path(at) is { IsEmpty: false } path => $"{string.Join(", ", path.Select(p => p.Label))} (put there on {m.At:yyyy-MM-dd}{Note(m)}).",
        var m => $"Put on {m.At:yyyy-MM-dd} in a place that is no longer listed{Note(m)}.",
    };

    /// <summary>Why a place cannot be kept beside the others: its outer place is unknown, or the places would lie inside each other.</summary>
    public Refusal? WrongIn(Place place)
    {
        var seen = new HashSet<Guid> { place.Id };
        var names = new List<string> { place.Label };
        for (var outer = place.Inside; outer is { } id;)
        {
            if (!seen.Add(id))
                return Refusal.Of("place", place.Label, $"places cannot lie inside each other: {string.Join(", which is in ", names)}, which is in {(id == place.Id ? place.Label : _places[id].Label)}");
            if (!_places.TryGetValue(id, out var found)) return Refusal.Of("place it lies in", $"{id}", "choose a place that is listed");
            names.Add(found.Label);
            outer = found.Inside;
        }
        return null;
    }

    static string Note(Moved m) => m.Note.Trim().Length > 0 ? $"; {m.Note.Trim()}" : "";
}
