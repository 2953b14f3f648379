using System.Collections.Immutable;
using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;
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

namespace WitnessMark.Web.Client.Wire;

/// <summary>How the stores' desk, hours and the calendar travel; spelled as in <see cref="WireJson"/>.</summary>
[JsonSourceGenerationOptions(JsonSerializerDefaults.Web, UseStringEnumConverter = true, IgnoreReadOnlyProperties = true, RespectNullableAnnotations = true, RespectRequiredConstructorParameters = true)]
[JsonSerializable(typeof(ImmutableArray<Versioned<MustPrecede>>))]
[JsonSerializable(typeof(Saving<MustPrecede>))]
[JsonSerializable(typeof(Saved<MustPrecede>))]
[JsonSerializable(typeof(ImmutableArray<Versioned<Firm>>))]
[JsonSerializable(typeof(Saving<Firm>))]
[JsonSerializable(typeof(Saved<Firm>))]
[JsonSerializable(typeof(ImmutableArray<Versioned<Quote>>))]
[JsonSerializable(typeof(Saving<Quote>))]
[JsonSerializable(typeof(Saved<Quote>))]
[JsonSerializable(typeof(ImmutableArray<Versioned<Order>>))]
[JsonSerializable(typeof(Saving<Order>))]
[JsonSerializable(typeof(Saved<Order>))]
[JsonSerializable(typeof(ImmutableArray<Versioned<Consignment>>))]
[JsonSerializable(typeof(Saving<Consignment>))]
[JsonSerializable(typeof(Saved<Consignment>))]
[JsonSerializable(typeof(ImmutableArray<Versioned<Place>>))]
[JsonSerializable(typeof(Saving<Place>))]
[JsonSerializable(typeof(Saved<Place>))]
[JsonSerializable(typeof(ImmutableArray<Versioned<TypedShape>>))]
[JsonSerializable(typeof(Saving<TypedShape>))]
[JsonSerializable(typeof(Saved<TypedShape>))]
[JsonSerializable(typeof(ImmutableArray<Versioned<NotNeeded>>))]
[JsonSerializable(typeof(Saving<NotNeeded>))]
[JsonSerializable(typeof(Saved<NotNeeded>))]
[JsonSerializable(typeof(ImmutableArray<Versioned<IntentChoices>>))]
[JsonSerializable(typeof(Saving<IntentChoices>))]
[JsonSerializable(typeof(Saved<IntentChoices>))]
[JsonSerializable(typeof(ImmutableArray<Versioned<SamplePhotograph>>))]
[JsonSerializable(typeof(Saving<SamplePhotograph>))]
[JsonSerializable(typeof(Saved<SamplePhotograph>))]
[JsonSerializable(typeof(ImmutableArray<Versioned<PictureLayer>>))]
[JsonSerializable(typeof(Saving<PictureLayer>))]
[JsonSerializable(typeof(Saved<PictureLayer>))]
[JsonSerializable(typeof(ImmutableArray<Versioned<PicturePair>>))]
[JsonSerializable(typeof(Saving<PicturePair>))]
[JsonSerializable(typeof(Saved<PicturePair>))]
[JsonSerializable(typeof(ImmutableArray<CameOff>))]
[JsonSerializable(typeof(ImmutableArray<PutBack>))]
[JsonSerializable(typeof(ImmutableArray<ConditionSeen>))]
[JsonSerializable(typeof(ImmutableArray<RouteChosen>))]
[JsonSerializable(typeof(ImmutableArray<Delivery>))]
[JsonSerializable(typeof(ImmutableArray<RateOfExchange>))]
[JsonSerializable(typeof(ImmutableArray<ConsignmentReturn>))]
[JsonSerializable(typeof(ImmutableArray<GivenBack>))]
[JsonSerializable(typeof(ImmutableArray<Moved>))]
[JsonSerializable(typeof(ImmutableArray<TagCode>))]
[JsonSerializable(typeof(ImmutableArray<Note>))]
[JsonSerializable(typeof(ImmutableArray<PictureTaken>))]
[JsonSerializable(typeof(ImmutableArray<PictureSaid>))]
[JsonSerializable(typeof(ImmutableArray<TakenBack>))]
[JsonSerializable(typeof(Stretch<CameOff>))]
[JsonSerializable(typeof(Stretch<PutBack>))]
[JsonSerializable(typeof(Stretch<ConditionSeen>))]
[JsonSerializable(typeof(Stretch<RouteChosen>))]
[JsonSerializable(typeof(Stretch<Delivery>))]
[JsonSerializable(typeof(Stretch<RateOfExchange>))]
[JsonSerializable(typeof(Stretch<ConsignmentReturn>))]
[JsonSerializable(typeof(Stretch<GivenBack>))]
[JsonSerializable(typeof(Stretch<Moved>))]
[JsonSerializable(typeof(Stretch<TagCode>))]
[JsonSerializable(typeof(Stretch<TakenBack>))]
[JsonSerializable(typeof(Stretch<Note>))]
[JsonSerializable(typeof(Stretch<PictureTaken>))]
[JsonSerializable(typeof(Stretch<PictureSaid>))]
[JsonSerializable(typeof(PictureStretch))]
[JsonSerializable(typeof(PictureOpened))]
[JsonSerializable(typeof(HoursHistory))]
[JsonSerializable(typeof(ImmutableArray<Started>))]
[JsonSerializable(typeof(ImmutableArray<HoursEntry>))]
[JsonSerializable(typeof(ImmutableArray<HoursWithdrawal>))]
[JsonSerializable(typeof(Versioned<WorkCalendar>))]
[JsonSerializable(typeof(Saving<WorkCalendar>))]
[JsonSerializable(typeof(Saved<WorkCalendar>))]
[JsonSerializable(typeof(Versioned<StandingOrder>))]
[JsonSerializable(typeof(Saving<StandingOrder>))]
[JsonSerializable(typeof(Saved<StandingOrder>))]
[JsonSerializable(typeof(Recorded))]
[JsonSerializable(typeof(KeptPicture))]
[JsonSerializable(typeof(PictureWork))]
[JsonSerializable(typeof(ExportAsked))]
[JsonSerializable(typeof(ExportStanding))]
public sealed partial class DeskJson : JsonSerializerContext
{
    /// <summary>The spelling of one kind of row.</summary>
    public static JsonTypeInfo<T> Of<T>() => (JsonTypeInfo<T>)Default.GetTypeInfo(typeof(T))!;
}

/// <summary>A picture that was kept, by the id its content gives it.</summary>
public sealed record KeptPicture(string Id);
