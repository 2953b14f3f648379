namespace WitnessMark.PlanningOffice.Tests.Hours;

/// <summary>Rows of an hours log, by number.</summary>
static class Logged
{
    /// <summary>Monday, eight in the morning by Greenwich.</summary>
    public static readonly DateTimeOffset Morning = new(2027, 3, 1, 8, 0, 0, TimeSpan.Zero);

    public static readonly DateTimeOffset Now = Morning.AddDays(60);

    public static Guid Id(int n) => new(n, 0, 0, [9, 2, 3, 4, 5, 6, 7, 8]);

    public static HoursEntry Entry(int n, double hoursOn, double minutes, int job = 100) => new(Id(n), Id(job), null, Morning.AddHours(hoursOn), minutes, "", "bench");

    public static Started Tap(int n, double hoursOn, int job = 100) => new(Id(n), Id(job), Morning.AddHours(hoursOn), "phone");

    public static HoursHistory Of(IReadOnlyList<Started> starts, params HoursEntry[] entries) => new(starts, entries, []);
}
