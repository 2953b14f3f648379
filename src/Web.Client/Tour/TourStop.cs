using System.Collections.Immutable;
using WitnessMark.Stores;

namespace WitnessMark.Web.Client.Tour;

/// <summary>A page worth seeing, and why, in one sentence.</summary>
/// <param name="Path">Without the host.</param>
public sealed record TourStop(string Path, string Title, string Words);

/// <summary>The way through the demonstration van.</summary>
public static class TourStops
{
    /// <summary>Stops whose part or sample is no longer there are passed by.</summary>
    public static ImmutableArray<TourStop> Of(VehicleTree van)
    {
        var home = $"vehicle/{van.Vehicle.Row.Id}";
        return
        [
            .. new[]
            {
                new TourStop(home, "The tree", "Every part hangs on its system, with the state it was found in and the way it will be made good; a part is found by a few letters, misspelt or not."),
                At(PartPath("Dynamo mounting plate"), "One part", "Condition, place, samples, routes compared with their cost, and everything that was seen of it stand on one page."),
                At(SamplePath("Dynamo mounting plate"), "Readings that check one another", "More readings than needed make the plan true, and the one that was misread is named before any metal is cut."),
                At(SamplePath("Cylinder head stud", "made-to"), "What it was made to", "A worn stud is measured, and the size it was once made to is told with its odds."),
                At(SamplePath("Dynamo mounting plate", "drawing"), "The drawing", "The true plan becomes a dimensioned drawing, a 1:1 template and a file for the cutter."),
                At(SamplePath("Rear lamp bracket", "blank"), "The blank", "A folded part is laid flat with its bend lines, so that it comes out to size at the first try."),
                new TourStop($"{home}/loans", "Going back", "What was lent goes back by a date, and here it says which readings must still be taken before it may."),
                new TourStop($"{home}/apart", "Coming apart", "What comes off is written down with its fasteners, its bag and a picture: that is what puts it together again years later."),
                new TourStop($"{home}/pictures", "Pictures", "One before a thing is touched, one when it is apart, one when it is done: they are drawn on, found by part and words, and two of them laid over each other."),
                new TourStop("planning/next", "What to do next", "Two hours and rain outside: the jobs that fit come first, each with its reason."),
                new TourStop("planning", "The odds", "Many simulated courses of the work give honest dates and sums, as odds and not as promises."),
            }.OfType<TourStop>(),
        ];

        static TourStop? At(string? path, string title, string words) => path is null ? null : new(path, title, words);

        string? PartPath(string name) => van.Parts.FirstOrDefault(p => p.Row.Name == name).Row is { } part ? $"{home}/part/{part.Id}" : null;

        string? SamplePath(string name, string sheet = "") =>
            van.Samples.Select(s => s.Row).FirstOrDefault(s => van.Parts.Any(p => p.Row.Id == s.PartId && p.Row.Name == name)) is { } sample
                ? $"{home}/part/{sample.PartId}/sample/{sample.Id}{(sheet.Length > 0 ? $"?sheet={sheet}" : "")}" : null;
    }
}
