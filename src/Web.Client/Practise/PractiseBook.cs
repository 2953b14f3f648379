using System.Collections.Immutable;
using System.Text.Json;
using System.Text.Json.Serialization;
using WitnessMark.FrontOffice.PractiseMeasuring;
using WitnessMark.Web.Client.Shell;

namespace WitnessMark.Web.Client.Practise;

/// <summary>A practice sheet as far as it has been measured. It lives in this browser alone and never goes into the records.</summary>
/// <param name="Instrument">What the next reading is taken with.</param>
/// <param name="Ended">The person has asked for the truth.</param>
public sealed record PractiseDraft(int Number, string Paper, string Instrument, ImmutableArray<PracticeReading> Readings, bool Ended)
{
    public PracticeRequest Request => new(Number, Readings);

    /// <summary>Places among the readings, from 0, of those of one step.</summary>
    public IEnumerable<int> Of(PracticeStep step) => Enumerable.Range(0, Readings.Length).Where(i => Readings[i].Same(step.Kind, step.From, step.To));
}

/// <summary>Keeps the sheet in hand, and the one before it.</summary>
public sealed class PractiseBook(PageScript page, TimeProvider clock)
{
    const string Key = "wm.practise", Before = "wm.practise.before";

    public PractiseDraft Draft { get; private set; } = Read(page, Key) ?? Fresh(clock);

    public PractiseDraft? Earlier { get; private set; } = Read(page, Before);

    public void Keep(PractiseDraft draft)
    {
        Draft = draft;
        page.Keep(Key, Written(draft));
    }

    /// <summary>Puts the sheet in hand away and takes another number.</summary>
    public void Another()
    {
        if (!Draft.Readings.IsEmpty)
        {
            Earlier = Draft;
            page.Keep(Before, Written(Draft));
        }
        Keep(Fresh(clock) with { Paper = Draft.Paper, Instrument = Draft.Instrument });
    }

    /// <summary>The sheet before comes to hand again, and this one is put away.</summary>
    public void Back()
    {
        if (Earlier is not { } earlier) return;
        (Earlier, var now) = (Draft.Readings.IsEmpty ? null : Draft, earlier);
        if (Earlier is null) page.Forget(Before);
        else page.Keep(Before, Written(Earlier));
        Keep(now);
    }

    /// <summary>The number is taken off the clock: nobody chooses a sheet that he knows.</summary>
    static PractiseDraft Fresh(TimeProvider clock) =>
        new(1 + (int)(clock.GetUtcNow().ToUnixTimeMilliseconds() % PracticeSheet.LastNumber), "A4", "calliper", [], false);

    static string Written(PractiseDraft draft) => JsonSerializer.Serialize(draft, PractiseJson.Default.PractiseDraft);

    static PractiseDraft? Read(PageScript page, string key)
    {
        try
        {
            return page.Kept(key) is { } text && JsonSerializer.Deserialize(text, PractiseJson.Default.PractiseDraft) is { Readings.IsDefault: false, Number: >= 1 and <= PracticeSheet.LastNumber } draft ? draft : null;
        }
        catch (JsonException)
        {
            return null;
        }
    }
}

[JsonSourceGenerationOptions(JsonSerializerDefaults.Web, IgnoreReadOnlyProperties = true, RespectNullableAnnotations = true, RespectRequiredConstructorParameters = true)]
[JsonSerializable(typeof(PractiseDraft))]
sealed partial class PractiseJson : JsonSerializerContext;
