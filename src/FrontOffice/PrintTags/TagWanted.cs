using System.Collections.Immutable;
using WitnessMark.Stores;
using WitnessMark.Stores.Outwork;
using WitnessMark.Stores.Places;
using WitnessMark.Stores.Tags;

namespace WitnessMark.FrontOffice.PrintTags;

/// <summary>A thing that wants a tag.</summary>
/// <param name="Remark">Under its name on the label; may be empty.</param>
public sealed record TagWanted(TagKind Kind, Guid Subject, string Title, string Remark)
{
    /// <param name="which"><c>all</c>, <c>undecided</c> (no route yet), or words that all occur in the part's name, reference or system.</param>
    public static ImmutableArray<TagWanted> Parts(VehicleTree tree, string which)
    {
        var systems = tree.Systems.ToDictionary(s => s.Row.Id, s => s.Row.Name);
        return [.. tree.Parts.Select(p => p.Row).Where(p => Chosen(p, systems.GetValueOrDefault(p.SystemId, ""), which.Trim())).Select(p => Part(p, systems.GetValueOrDefault(p.SystemId, "")))];
    }

    public static TagWanted Of(Place place) => new(TagKind.Place, place.Id, place.Label, place.Notes);

    public static TagWanted Of(Consignment box, string firm) => new(TagKind.Consignment, box.Id, $"{firm}, out on {box.Out:yyyy-MM-dd}", box.Wanted);

    static TagWanted Part(Part p, string system) => new(
        TagKind.Part, p.Id, p.Name,
        string.Join(", ", new[] { p.Hand == Hand.None ? "" : $"{p.Hand}", p.Quantity > 1 ? $"{p.Quantity} off" : "", p.Reference, system }.Where(w => w.Length > 0)));

    static bool Chosen(Part p, string system, string which) => which.ToLowerInvariant() switch
    {
        "all" => true,
        "undecided" => p.Route is null,
        var words => words.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)
            .All(w => $"{p.Name} {p.Reference} {system}".Contains(w, StringComparison.OrdinalIgnoreCase)),
    };
}
