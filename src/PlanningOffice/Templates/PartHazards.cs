using System.Collections.Immutable;
using WitnessMark.Stores;

namespace WitnessMark.PlanningOffice.Templates;

/// <summary>
/// What can hurt someone at a job, guessed from the words of its part and from the kind of work. A guess: it reminds too often
/// rather than too seldom, and a part whose name says nothing gets the cautions of the work only.
/// </summary>
public static class PartHazards
{
    static readonly ImmutableArray<(string Word, ImmutableArray<Hazard> Brings)> ByWord =
    [
        ("brake", [Hazard.BrakeOrSteering]), ("steer", [Hazard.BrakeOrSteering]), ("kingpin", [Hazard.BrakeOrSteering]),
        ("drop arm", [Hazard.BrakeOrSteering]), ("drag link", [Hazard.BrakeOrSteering]), ("track rod", [Hazard.BrakeOrSteering]),
        ("axle", [Hazard.BrakeOrSteering]), ("shackle", [Hazard.BrakeOrSteering]), ("wheel", [Hazard.BrakeOrSteering]),
        ("spring", [Hazard.Spring]), ("damper", [Hazard.Spring]), ("tank", [Hazard.Tank]), ("petrol", [Hazard.Tank]),
        ("lining", [Hazard.AsbestosLining]), ("brake shoe", [Hazard.AsbestosLining]), ("brake drum", [Hazard.AsbestosLining]),
        ("clutch", [Hazard.AsbestosLining]), ("gasket", [Hazard.AsbestosLining]), ("manifold", [Hazard.AsbestosLining]),
        ("heat treat", [Hazard.HeatTreatment]), ("harden", [Hazard.HeatTreatment]), ("leaf", [Hazard.HeatTreatment]),
        ("loom", [Hazard.Electrics]), ("wiring", [Hazard.Electrics]), ("dynamo", [Hazard.Electrics]), ("battery", [Hazard.Electrics]),
        ("lamp", [Hazard.Electrics]), ("lead", [Hazard.OldPaint]), ("blast", [Hazard.Blasting]),
        ("weld", [Hazard.Welding, Hazard.Zinc]), ("rotten", [Hazard.Welding, Hazard.Zinc]), ("rusted", [Hazard.Welding, Hazard.Zinc]),
    ];

    /// <param name="system">Name of its system; may be empty.</param>
    public static ImmutableArray<Hazard> Of(Part part, string system)
    {
        var words = $" {part.Name} {part.Condition} {part.Route?.Reason} {system}";
        return [.. ByWord.Where(w => words.Contains($" {w.Word}", StringComparison.OrdinalIgnoreCase)).SelectMany(w => w.Brings).Distinct()];
    }

    /// <summary>Those of the part and those of the work.</summary>
    /// <param name="part">Null for a job on a whole system or vehicle.</param>
    public static ImmutableArray<Hazard> Of(Job job, Part? part, string system) =>
        [.. (part is null ? [] : Of(part, system)).Concat(OfKind(job)).Distinct()];

    static IEnumerable<Hazard> OfKind(Job job) => job.Kind switch
    {
        WorkKind.Strip or WorkKind.Refit => [Hazard.Jacking],
        WorkKind.Clean => [Hazard.OldPaint],
        WorkKind.Make => [Hazard.SharpEdges, Hazard.Cutting],
        WorkKind.Weld => [Hazard.Welding, Hazard.Zinc],
        WorkKind.Finish => [Hazard.OldPaint, Hazard.Painting],
        _ => [],
    };
}
