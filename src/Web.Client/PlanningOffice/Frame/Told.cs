using System.Globalization;
using WitnessMark.PlanningOffice;

namespace WitnessMark.Web.Client.PlanningOffice.Frame;

/// <summary>Figures of the plan as a person reads and writes them.</summary>
public static class Told
{
    static CultureInfo Plain => CultureInfo.InvariantCulture;

    public static string Day(DateOnly day) => day.ToString("d MMM yyyy", Plain);

    public static string Month(DateOnly day) => day.ToString("MMM yyyy", Plain);

    public static string Money(double amount) => amount.ToString("#,0", Plain);

    /// <summary>As a date field of a form holds it.</summary>
    public static string FieldDay(DateOnly? day) => day?.ToString("yyyy-MM-dd", Plain) ?? "";

    public static string Number(double x) => x.ToString("0.###", Plain);

    public static string Hours(ThreePoint hours) =>
        hours.Low == hours.High ? $"{hours.Likely.ToString("0.#", Plain)} h" : $"{hours.Low.ToString("0.#", Plain)} to {hours.High.ToString("0.#", Plain)} h, likely {hours.Likely.ToString("0.#", Plain)}";

    public static string Percent(double share) => share is > 0 and < 0.005 ? "under 1 %" : $"{(share * 100).ToString("0", Plain)} %";

    public static string Words(this JobState state) => state switch { JobState.Planned => "planned", JobState.InHand => "in hand", _ => "done" };

    public static string Words(this WorkPlace place) => place switch { WorkPlace.Bench => "bench", WorkPlace.Bay => "bay", _ => "anywhere" };

    /// <summary>What must be there, as a list; empty when nothing is wanted.</summary>
    public static string Words(this Needs needs) => string.Join(", ", new[]
    {
        needs.Place == WorkPlace.Anywhere ? "" : needs.Place.Words(), needs.Helper ? "helper" : "", needs.DryDay ? "dry day" : "", needs.Daylight ? "daylight" : "", needs.Noisy ? "noisy" : "",
    }.Where(w => w.Length > 0));
}
