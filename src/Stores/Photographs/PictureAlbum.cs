using System.Collections.Immutable;

namespace WitnessMark.Stores.Photographs;

/// <summary>Which pictures of a vehicle are wanted. What is left out does not narrow.</summary>
/// <param name="PartId">Only those of this part.</param>
/// <param name="NoPart">Only those of the whole vehicle.</param>
/// <param name="Words">All of these words must stand in what is said of it, in any order and case.</param>
/// <param name="Month">Begin with the newest of this month or earlier, as in 2031-05.</param>
/// <param name="Skip">Of those that fit, newest first; not counted where a month is given.</param>
public sealed record PicturesAsked(Guid? PartId = null, bool NoPart = false, string Words = "", string? Month = null, int Skip = 0, int Take = 60)
{
    public const int Most = 500;
}

/// <summary>A stretch of pictures, the newest taken first.</summary>
/// <param name="Skip">How many that fit stand before the first of these.</param>
/// <param name="Count">How many fit in all.</param>
/// <param name="Months">Newest first, with how many fit in each.</param>
public sealed record PictureStretch(ImmutableArray<PictureTaken> Rows, int Skip, int Count, ImmutableArray<PictureMonth> Months);

/// <param name="Month">As in 2031-05, by the clock of the device that took it.</param>
public sealed record PictureMonth(string Month, int Count);

/// <summary>One picture and its neighbours among all of the vehicle.</summary>
/// <param name="Said">What was said of it before, the oldest first, with when.</param>
public sealed record PictureStanding(PictureTaken Row, Guid? Newer, Guid? Older, ImmutableArray<SaidBefore> Said);

public sealed record SaidBefore(string Words, Guid? PartId, DateTimeOffset At);

/// <summary>
/// All pictures of a vehicle that stand, as they stand now, the newest taken first. Made once of the facts and asked many times.
/// </summary>
public sealed class PictureAlbum
{
    readonly ImmutableArray<PictureTaken> _rows;
    readonly ImmutableArray<PictureMonth> _months;
    readonly Dictionary<Guid, int> _places;
    readonly ILookup<Guid, PictureSaid> _said;
    readonly Dictionary<Guid, PictureTaken> _asTaken;

    /// <param name="taken">Those that stand, in the order they arrived; and likewise <paramref name="said"/>.</param>
    public PictureAlbum(IReadOnlyCollection<PictureTaken> taken, IEnumerable<PictureSaid> said)
    {
        _said = said.ToLookup(s => s.PictureId);
        _asTaken = taken.ToDictionary(t => t.Id);
        _rows = [.. taken.Select(Now).Reverse().OrderByDescending(t => t.At.UtcTicks)];
        _months = Months(_rows);
        _places = _rows.Select((r, i) => (r.Id, i)).ToDictionary(x => x.Id, x => x.i);
    }

    public int Count => _rows.Length;

    public PictureStretch Find(PicturesAsked asked)
    {
        var words = asked.Words.Split(' ', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        ImmutableArray<PictureTaken> fit = words.Length == 0 && asked is { PartId: null, NoPart: false } ? _rows : [.. _rows.Where(r =>
            (asked.PartId is not { } part || r.PartId == part) && (!asked.NoPart || r.PartId is null)
            && words.All(w => r.Words.Contains(w, StringComparison.OrdinalIgnoreCase)))];
        var months = fit == _rows ? _months : Months(fit);
        var skip = asked.Month is { Length: > 0 } month
            ? fit.TakeWhile(r => string.CompareOrdinal(MonthOf(r), month) > 0).Count()
            : Math.Clamp(asked.Skip, 0, fit.Length);
        return new([.. fit.Skip(skip).Take(asked.Take)], skip, fit.Length, months);
    }

    public PictureStanding? One(Guid taken)
    {
        if (!_places.TryGetValue(taken, out var at)) return null;
        var first = _asTaken[taken];
        ImmutableArray<SaidBefore> said = [new(first.Words, first.PartId, first.At), .. _said[taken].Select(s => new SaidBefore(s.Words, s.PartId, s.At))];
        return new(_rows[at], at > 0 ? _rows[at - 1].Id : null, at + 1 < _rows.Length ? _rows[at + 1].Id : null, said[..^1]);
    }

    public static string MonthOf(PictureTaken row) => $"{row.At:yyyy-MM}";

    /// <summary>Counted as numbers: twenty thousand texts would be made for a dozen months.</summary>
    static ImmutableArray<PictureMonth> Months(ImmutableArray<PictureTaken> rows) =>
        [.. rows.CountBy(r => 12 * r.At.Year + r.At.Month - 1).OrderByDescending(m => m.Key).Select(m => new PictureMonth($"{m.Key / 12:0000}-{m.Key % 12 + 1:00}", m.Value))];

    PictureTaken Now(PictureTaken row) => _said[row.Id].LastOrDefault() is { } said ? row with { Words = said.Words, PartId = said.PartId } : row;
}

/// <summary>The albums of the vehicles, as their facts stand.</summary>
public interface IPictureAlbums
{
    Task<PictureAlbum> Of(Guid vehicle, CancellationToken cancel = default);
}
