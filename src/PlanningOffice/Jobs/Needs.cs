namespace WitnessMark.PlanningOffice;

/// <summary>Where a job stands while it is done; a bay or a bench is taken until the job and what follows it (a cure) are over.</summary>
public enum WorkPlace { Anywhere, Bench, Bay }

/// <summary>What must be there, besides the person, while a job is worked on.</summary>
/// <param name="Helper">A second pair of hands.</param>
/// <param name="DryDay">Outdoors, or paint that takes no damp.</param>
/// <param name="Daylight">By day only: the eye needs it (paint, gaps).</param>
/// <param name="Noisy">Not in the quiet hours.</param>
public sealed record Needs(WorkPlace Place, bool Helper, bool DryDay, bool Daylight, bool Noisy)
{
    public static Needs None { get; } = new(WorkPlace.Anywhere, false, false, false, false);
}
