using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.PlanningOffice;
using WitnessMark.Stores;
using WitnessMark.Stores.Keeping;
using WitnessMark.Stores.Notes;
using WitnessMark.Stores.Photographs;
using WitnessMark.Stores.Places;
using WitnessMark.Web.Client.Outbox;
using WitnessMark.Web.Client.PlanningOffice.Frame;

namespace WitnessMark.Web.Client.Shell.Jotting;

/// <summary>What the quick-add sheet chooses from.</summary>
public sealed record JotShelf(VehicleTree Tree, ImmutableArray<Job> Jobs, ImmutableArray<Place> Places, DateOnly Today)
{
    public string TodayWritten => Told.FieldDay(Today);

    public IEnumerable<(string, string)> JobChoices =>
        Jobs.OrderBy(j => j.State switch { JobState.InHand => 0, JobState.Planned => 1, _ => 2 }).Select(j => (j.Id.ToString(), j.Title)).Prepend(("", "choose"));

    public IEnumerable<(string, string)> SystemChoices => Tree.Systems.OrderBy(s => s.Row.Order).Select(s => (s.Row.Id.ToString(), s.Row.Name)).Prepend(("", "choose"));

    public IEnumerable<(string, string)> PlaceChoices
    {
        get
        {
            var at = new WhereIs(Places, []);
            return Places.Select(p => (p.Id.ToString(), string.Join(", ", at.Path(p.Id).Select(o => o.Label)))).OrderBy(p => p.Item2, StringComparer.Ordinal).Prepend(("", "taken out, not put down yet"));
        }
    }
}

/// <summary>Keeps what is jotted down.</summary>
public sealed class JotDesk(Server server, DeskServer desk, Tray tray, ThisDevice here, TimeProvider clock)
{
    const double MostHours = 24;

    DateTimeOffset Now => clock.GetLocalNow();

    /// <summary>The shelf, or why there is none.</summary>
    public async Task<(JotShelf? Shelf, string? Why)> Fetch(Guid? vehicle)
    {
        var id = vehicle ?? ((await server.Vehicles()).Value is { IsDefaultOrEmpty: false } all ? all[0].Row.Id : null);
        if (id is not { } of) return (null, "There is no vehicle yet: begin one in the Stores.");
        var (trees, works, places) = (server.Tree(of), server.Jobs(of), desk.Decisions<Place>(of));
        if ((await trees) is not { Value: { } tree } reply) return (null, (await trees).Refusal ?? "The host does not answer and nothing of this vehicle is kept here.");
        return (new(tree, [.. Rows((await works).Value)], [.. Rows((await places).Value)], DateOnly.FromDateTime(Now.Date)), null);

        static IEnumerable<T> Rows<T>(ImmutableArray<Versioned<T>> rows) => rows.IsDefault ? [] : rows.Select(r => r.Row);
    }

    /// <summary>Answers why not, or null when it is kept.</summary>
    /// <exception cref="RefusedException">A field cannot be read.</exception>
    public Task<string?> Keep(JotShelf shelf, Jot jot, Guid? part, ImmutableArray<string> pictures) => jot.Kind switch
    {
        Jot.Note => Append(new Note(tray.NewId(), Vehicle(shelf), part, jot.Words.Trim(), Now, here.Name)),
        Jot.Picture => Pictures(shelf, jot, part, pictures),
        Jot.Time => Log(jot, shelf.Today),
        Jot.NewPart => NewPart(jot),
        Jot.Move => Append(new Moved(tray.NewId(), Vehicle(shelf), part ?? throw Refused("part", "", "choose the part that was put away"), Guid.TryParse(jot.Place, out var to) ? to : null, jot.MoveNote.Trim(), Now, here.Name)),
        _ => throw Refused("kind", jot.Kind, "choose what is to be written down"),
    };

    Task<string?> Append<T>(T fact) where T : class, IFact => tray.Append(fact);

    async Task<string?> Pictures(JotShelf shelf, Jot jot, Guid? part, ImmutableArray<string> pictures)
    {
        if (pictures.IsEmpty) throw Refused("pictures", "", "take or choose one");
        foreach (var picture in pictures)
            if (await Append(new PictureTaken(tray.NewId(), Vehicle(shelf), part, picture, jot.PictureWords.Trim(), Now, here.Name)) is { } why) return why;
        return null;
    }

    /// <summary>Hours are put at noon of their day.</summary>
    async Task<string?> Log(Jot jot, DateOnly today)
    {
        var job = Guid.TryParse(jot.Job, out var id) ? id : throw Refused("job", "", "choose one");
        var hours = Typed.Number("hours", jot.Hours);
        if (hours is not (> 0 and <= MostHours)) throw Refused("hours", jot.Hours, "give more than 0 and at most 24");
        var on = jot.Day.Length == 0 ? today : Typed.Day("day", jot.Day)!.Value;
        if (on > today) throw Refused("day", jot.Day, "hours cannot be logged before they are worked");
        return await tray.Append(new HoursEntry(tray.NewId(), job, null, new DateTimeOffset(on.ToDateTime(new(12, 0)), Now.Offset), Math.Round(hours * 60, 1), jot.HoursNote.Trim(), here.Name));
    }

    Task<string?> NewPart(Jot jot)
    {
        var system = Guid.TryParse(jot.System, out var id) ? id : throw Refused("system", "", "choose the one it belongs to");
        var part = new Part(tray.NewId(), system, jot.PartName.Trim(), "", Hand.None, 1, "", null);
        return tray.Save(part);
    }

    static Guid Vehicle(JotShelf shelf) => shelf.Tree.Vehicle.Row.Id;

    static RefusedException Refused(string field, string value, string right) => new(Refusal.Of(field, value, right));
}
