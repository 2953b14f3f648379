using System.Text.Json;
using System.Text.Json.Serialization;

namespace WitnessMark.Web.Client.Shell.Jotting;

/// <summary>What is half written in the quick-add sheet; it outlives a closed sheet, a left page and a closed browser.</summary>
/// <param name="Kind">One of <see cref="Kinds"/>.</param>
public sealed record Jot(
    string Kind = Jot.Note, string Words = "", string PictureWords = "", string Job = "", string Hours = "", string Day = "", string HoursNote = "", string PartName = "", string System = "", string Place = "", string MoveNote = "")
{
    public const string Note = "note", Picture = "picture", Time = "hours", Reading = "reading", NewPart = "part", Move = "place";

    const string Key = "wm.draft.jot";

    public static readonly (string Kind, string Words)[] Kinds =
        [(Note, "Note"), (Picture, "Picture"), (Time, "Hours"), (Reading, "Reading"), (NewPart, "Part"), (Move, "Where it is")];

    public static Jot Open(PageScript page)
    {
        try
        {
            return page.Kept(Key) is { } text && JsonSerializer.Deserialize(text, JotJson.Default.Jot) is { } kept ? kept : new();
        }
        catch (JsonException)
        {
            return new();
        }
    }

    public void Keep(PageScript page) => page.Keep(Key, JsonSerializer.Serialize(this, JotJson.Default.Jot));
}

[JsonSourceGenerationOptions(JsonSerializerDefaults.Web)]
[JsonSerializable(typeof(Jot))]
sealed partial class JotJson : JsonSerializerContext;
