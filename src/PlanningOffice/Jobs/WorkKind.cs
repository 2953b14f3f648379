namespace WitnessMark.PlanningOffice;

/// <summary>Kinds of work, coarse enough that a person's own record of one soon says how far his guesses are out.</summary>
public enum WorkKind { Look, Strip, Clean, Survey, Make, FitUp, Weld, Finish, Refit, Adjust, Other }

public static class WorkKinds
{
    public static string Words(this WorkKind kind) => kind switch
    {
        WorkKind.Look => "looking",
        WorkKind.Strip => "stripping",
        WorkKind.Clean => "cleaning",
        WorkKind.Survey => "measuring",
        WorkKind.Make => "making",
        WorkKind.FitUp => "fitting up",
        WorkKind.Weld => "welding",
        WorkKind.Finish => "finishing",
        WorkKind.Refit => "refitting",
        WorkKind.Adjust => "adjusting",
        _ => "other work",
    };
}
