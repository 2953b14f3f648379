using System.Text.Json;
using WitnessMark.Maths;

namespace WitnessMark.Web.Client.Outbox.Shelf;

/// <summary>What waits, as a file: carried to the desk when this device never sees home again. Sent from there, each entry counts once.</summary>
sealed record TrayFile(int Version, string Device, IReadOnlyList<Unsent> Entries, IReadOnlyList<Unsaved> Decisions, IReadOnlyList<PictureBytes> Pictures)
{
    const int Known = 1;

    public static string Write(string device, Lying lying, IReadOnlyList<PictureBytes> pictures) =>
        JsonSerializer.Serialize(new(Known, device, [.. lying.Entries.Values], [.. lying.Decisions.Values], pictures), ShelfJson.Default.TrayFile);

    /// <exception cref="RefusedException">It is no such file.</exception>
    public static TrayFile Read(string text)
    {
        try
        {
            var file = JsonSerializer.Deserialize(text, ShelfJson.Default.TrayFile);
            if (file is not { Version: Known, Entries: not null, Decisions: not null, Pictures: not null }) throw Not();
            if (file.Entries.FirstOrDefault(e => !Kinds.Fits(e)) is { } odd) throw new RefusedException(Refusal.Of("kind of entry", odd?.Kind, "take a file that this app wrote"));
            if (file.Decisions.FirstOrDefault(d => !Kinds.Fits(d)) is { } strange) throw new RefusedException(Refusal.Of("kind of decision", strange?.Kind, "take a file that this app wrote"));
            return file;
        }
        catch (JsonException)
        {
            throw Not();
        }
    }

    static RefusedException Not() => new(Refusal.Of("file of what waits", "something else", "choose the file that \"Hand over as a file\" made"));
}

/// <param name="Bytes">Base 64 in the file.</param>
sealed record PictureBytes(string Id, string Type, byte[] Bytes);
