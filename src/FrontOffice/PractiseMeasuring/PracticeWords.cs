using WitnessMark.DrawingOffice.Survey;

namespace WitnessMark.FrontOffice.PractiseMeasuring;

/// <summary>Where to lay the jaws, told to someone who does it for the first time.</summary>
static class PracticeWords
{
    public static string Of(PracticePlate plate, ReadingKind kind, string from, string? to) => kind switch
    {
        ReadingKind.Diameter => $"Across hole {from}, through its cross",
        ReadingKind.LengthAlongEdge => plate.Edges.First(e => e.Id == from) is var e ? $"Along edge {from}, from corner {e.From} to corner {e.To}" : "",
        ReadingKind.CentreDistance => $"From {Middle(from)} to {Middle(to!)}",
        ReadingKind.InsideBetweenHoles => $"From {Near(from)} to {Near(to!)}: the shortest way",
        ReadingKind.OutsideOverHoles => $"Over both: from {Far(from)} to {Far(to!)}, the longest way",
        ReadingKind.EdgeToHole => $"From edge {to} square across to the near side of hole {from}",
        ReadingKind.CentreToEdge => $"From edge {to} square across to {Middle(from)}",
        _ => $"{from} to {to}",
    };

    static bool Hole(string id) => id[0] == 'H';

    static string Middle(string id) => Hole(id) ? $"the cross of hole {id}" : $"corner {id}";

    static string Near(string id) => Hole(id) ? $"the near side of hole {id}" : $"corner {id}";

    static string Far(string id) => Hole(id) ? $"the far side of hole {id}" : $"corner {id}";
}
