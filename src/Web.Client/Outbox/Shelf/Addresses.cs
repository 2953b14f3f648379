namespace WitnessMark.Web.Client.Outbox.Shelf;

/// <summary>Where the rows that have an address of their own are read and put; a decision waits under the same name.</summary>
public static class Addresses
{
    public const string Shop = "api/shop", Calendar = "api/calendar", Instruments = "api/instruments", Vehicles = "api/vehicles";

    public static string Vehicle(Guid id) => $"api/vehicles/{id}";

    public static string System(Guid id) => $"api/systems/{id}";

    public static string Assembly(Guid id) => $"api/assemblies/{id}";

    public static string Part(Guid id) => $"api/parts/{id}";

    public static string Sample(Guid id) => $"api/samples/{id}";

    public static string Job(Guid id) => $"api/jobs/{id}";

    public static string Jobs(Guid vehicle) => $"{Vehicle(vehicle)}/jobs";

    public static string Milestone(Guid id) => $"api/milestones/{id}";

    public static string Milestones(Guid vehicle) => $"{Vehicle(vehicle)}/milestones";

    public static string Means(Guid vehicle) => $"{Vehicle(vehicle)}/means";

    public static string Order(Guid vehicle) => $"{Vehicle(vehicle)}/order";

    public static string Instrument(Guid id) => $"{Instruments}/{id}";
}
