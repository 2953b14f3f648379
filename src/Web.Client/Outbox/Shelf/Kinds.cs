using WitnessMark.PlanningOffice;
using WitnessMark.Stores;
using WitnessMark.Stores.ComingApart;
using WitnessMark.Stores.Intentions;
using WitnessMark.Stores.Judging;
using WitnessMark.Stores.Keeping;
using WitnessMark.Stores.Loans;
using WitnessMark.Stores.Notes;
using WitnessMark.Stores.Orders;
using WitnessMark.Stores.Outwork;
using WitnessMark.Stores.Photographs;
using WitnessMark.Stores.Places;
using WitnessMark.Stores.Shapes;
using WitnessMark.Stores.Tags;

namespace WitnessMark.Web.Client.Outbox.Shelf;

/// <summary>Where each kind goes, after which others, and what it is called before a person.</summary>
public static class Kinds
{
    public const string Starts = "api/hours/starts", Hours = "api/hours/entries", HoursTakenBack = "api/hours/withdrawals", Withdrawals = "api/withdrawals";

    /// <summary>Most entries in one sending; a thousand are well below what the host takes.</summary>
    public const int MostAtOnce = 100;

    /// <summary>Most text in one sending, characters.</summary>
    public const int MostText = 500_000;

    /// <summary>Every kind that lies at the stores' desk.</summary>
    public static readonly string[] OfDesk =
    [
        nameof(MustPrecede), nameof(Firm), nameof(Quote), nameof(Order), nameof(Consignment), nameof(Place), nameof(TypedShape), nameof(NotNeeded), nameof(IntentChoices),
        nameof(SamplePhotograph), nameof(PictureLayer), nameof(PicturePair), nameof(CameOff), nameof(PutBack), nameof(ConditionSeen), nameof(RouteChosen), nameof(Delivery),
        nameof(RateOfExchange), nameof(ConsignmentReturn), nameof(GivenBack), nameof(Moved), nameof(TagCode), nameof(Note), nameof(PictureTaken), nameof(PictureSaid), nameof(TakenBack),
    ];

    public static string Desk(string kind, Guid vehicle) => $"api/vehicles/{vehicle}/desk/{kind}";

    public static string Desk(string kind, Guid vehicle, Guid id) => $"{Desk(kind, vehicle)}/{id}";

    public static string Readings(Guid sample) => $"api/samples/{sample}/readings";

    public static string Sketch(Guid sample) => $"api/samples/{sample}/sketch";

    public static string Folded(Guid sample) => $"api/samples/{sample}/folded";

    /// <summary>What other rows stand on, each after those it stands on itself: these decisions go before any entry.</summary>
    static readonly string[] s_ground = [nameof(Vehicle), nameof(VehicleSystem), nameof(Assembly), nameof(Part), nameof(PartSample), nameof(Job)];

    /// <summary>Its place among the decisions that others stand on; −1 for one that nothing stands on.</summary>
    public static int Depth(string kind) => Array.IndexOf(s_ground, kind);

    /// <summary>What names another entry goes after it: a withdrawal after its reading, hours after the start they close.</summary>
    public static int Rank(string kind) => kind switch
    {
        nameof(HoursEntry) or nameof(Withdrawal) or nameof(TakenBack) => 1,
        nameof(HoursWithdrawal) => 2,
        _ => 0,
    };

    /// <summary>Hours name a job and not a vehicle.</summary>
    public static bool OfHours(string address) => address.StartsWith("api/hours/", StringComparison.Ordinal);

    /// <summary>A file may have come from anywhere: only addresses that this app writes to are taken.</summary>
    public static bool Fits(Unsent? e) => e is { Text: not null, Address: { } address, Kind: { Length: > 0 } kind } && e.Id != Guid.Empty && kind switch
    {
        nameof(ReadingEntry) => IsIn(address, "api/samples/", "/readings"),
        nameof(Withdrawal) => address == Withdrawals,
        nameof(Started) => address == Starts,
        nameof(HoursEntry) => address == Hours,
        nameof(HoursWithdrawal) => address == HoursTakenBack,
        _ => OfDesk.Contains(kind) && IsIn(address, "api/vehicles/", $"/desk/{kind}"),
    };

    public static bool Fits(Unsaved? d) => d is { Text: not null, Address: { } address, Kind: { Length: > 0 } kind } && kind switch
    {
        nameof(SampleSketch) => IsIn(address, "api/samples/", "/sketch"),
        nameof(FoldedPart) => IsIn(address, "api/samples/", "/folded"),
        nameof(Vehicle) => IsIn(address, "api/vehicles/", ""),
        nameof(VehicleSystem) => IsIn(address, "api/systems/", ""),
        nameof(Assembly) => IsIn(address, "api/assemblies/", ""),
        nameof(Part) => IsIn(address, "api/parts/", ""),
        nameof(PartSample) => IsIn(address, "api/samples/", ""),
        nameof(OwnedInstrument) => IsIn(address, "api/instruments/", ""),
        nameof(Job) => IsIn(address, "api/jobs/", ""),
        nameof(Milestone) => IsIn(address, "api/milestones/", ""),
        nameof(Means) => IsIn(address, "api/vehicles/", "/means"),
        nameof(StandingOrder) => IsIn(address, "api/vehicles/", "/order"),
        nameof(WorkCalendar) => address == Addresses.Calendar,
        nameof(Shop) => address == Addresses.Shop,
        _ => OfDesk.Contains(kind) && address.LastIndexOf('/') is > 0 and var at && Guid.TryParse(address[(at + 1)..], out _) && IsIn(address[..at], "api/vehicles/", $"/desk/{kind}"),
    };

    public static string Words(string kind) => kind switch
    {
        nameof(ReadingEntry) => "Reading",
        nameof(Withdrawal) => "Reading taken back",
        nameof(TakenBack) => "Entry taken back",
        nameof(Started) => "Clock started",
        nameof(HoursEntry) => "Hours",
        nameof(HoursWithdrawal) => "Hours taken back",
        nameof(SampleSketch) => "Sketch",
        nameof(FoldedPart) => "Folded part",
        nameof(VehicleSystem) => "System",
        nameof(PartSample) => "Sample",
        nameof(OwnedInstrument) => "Instrument",
        nameof(WorkCalendar) => "Calendar",
        nameof(StandingOrder) => "Order of work",
        nameof(ConditionSeen) => "Condition",
        nameof(RateOfExchange) => "Rate of exchange",
        nameof(TagCode) => "Tag",
        nameof(MustPrecede) => "What goes before what",
        nameof(Consignment) or nameof(ConsignmentReturn) => "Outside work",
        nameof(TypedShape) => "Shape",
        nameof(SamplePhotograph) => "Photograph of a sample",
        nameof(IntentChoices) => "Choices of intent",
        _ => Spaced(kind),
    };

    static string Spaced(string kind) => string.Concat(kind.Select((c, i) => i > 0 && char.IsUpper(c) ? $" {char.ToLowerInvariant(c)}" : $"{c}"));

    static bool IsIn(string address, string before, string after) =>
        address.StartsWith(before, StringComparison.Ordinal) && address.EndsWith(after, StringComparison.Ordinal)
        && address.Length > before.Length + after.Length && Guid.TryParse(address[before.Length..^after.Length], out _);
}
