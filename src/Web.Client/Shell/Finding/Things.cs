using WitnessMark.PlanningOffice;
using WitnessMark.Stores;
using WitnessMark.Stores.Notes;
using WitnessMark.Stores.Places;
using WitnessMark.Stores.Tags;
using WitnessMark.Web.Client.Stores;

namespace WitnessMark.Web.Client.Shell.Finding;

/// <summary>What is kept of a vehicle, as it may be found.</summary>
static class Things
{
    /// <summary>Of a note as much is shown.</summary>
    const int NoteShown = 60;

    public static IEnumerable<Findable> Parts(VehicleTree tree, IEnumerable<TagCode> codes, WhereIs at)
    {
        var tags = codes.Where(c => c.Kind == TagKind.Part).ToLookup(c => c.Subject, c => c.Code);
        return PartWords.Of(tree).Select(p => new Findable("Parts", PartWording.Full(p.Part), Joined(p.System, p.Assembly),
            Joined([p.Part.Reference, p.Part.Condition, .. tags[p.Part.Id], Place(at, p.Part.Id)]), Part(tree, p.Part.Id)));
    }

    public static IEnumerable<Findable> Samples(VehicleTree tree)
    {
        var names = tree.Parts.ToDictionary(p => p.Row.Id, p => PartWording.Full(p.Row));
        return tree.Samples.Select(s => s.Row).Select(s => new Findable(s.Loan is null ? "Samples" : "Samples on loan", s.Title, names.GetValueOrDefault(s.PartId, ""), s.Loan?.Lender ?? "",
            $"{Part(tree, s.PartId)}/sample/{s.Id}"));
    }

    public static IEnumerable<Findable> Jobs(IEnumerable<Job> jobs) =>
        jobs.Select(j => new Findable("Jobs", j.Title, j.State switch { JobState.InHand => "in hand", JobState.Done => "done", _ => "planned" }, "", "planning/jobs"));

    public static IEnumerable<Findable> Notes(Guid vehicle, VehicleTree tree, IEnumerable<Note> notes)
    {
        var names = tree.Parts.ToDictionary(p => p.Row.Id, p => PartWording.Full(p.Row));
        return notes.Reverse().Select(n => new Findable("Notes", n.Words.Length > NoteShown ? n.Words[..NoteShown] + "…" : n.Words,
            Joined(n.PartId is { } part ? names.GetValueOrDefault(part, "") : "", n.At.ToString("yyyy-MM-dd")), n.Words, n.PartId is { } id ? $"vehicle/{vehicle}/part/{id}" : $"vehicle/{vehicle}/pictures"));
    }

    public static IEnumerable<Findable> Places(Guid vehicle, IEnumerable<Place> places, WhereIs at) =>
        places.Select(p => new Findable("Places", p.Label, string.Join(", ", at.Path(p.Id).SkipLast(1).Select(o => o.Label)), p.Notes, $"vehicle/{vehicle}/places"));

    public static IEnumerable<Findable> Tags(Guid vehicle, IEnumerable<TagCode> codes) =>
        codes.Select(c => new Findable("Tags", TagSpelling.Printed(c.Code), c.Words, c.Code, $"t/{c.Code}"));

    public static string Joined(params IEnumerable<string> words) => string.Join(", ", words.Where(w => w.Length > 0));

    static string Place(WhereIs at, Guid part) => at.Last(part)?.PlaceId is { } place ? string.Join(" ", at.Path(place).Select(p => p.Label)) : "";

    static string Part(VehicleTree tree, Guid part) => $"vehicle/{tree.Vehicle.Row.Id}/part/{part}";
}
