using WitnessMark.Stores.ComingApart;
using WitnessMark.Stores.Intentions;
using WitnessMark.Stores.Judging;
using WitnessMark.Stores.Loans;
using WitnessMark.Stores.Notes;
using WitnessMark.Stores.Orders;
using WitnessMark.Stores.Outwork;
using WitnessMark.Stores.Photographs;
using WitnessMark.Stores.Places;
using WitnessMark.Stores.Shapes;
using WitnessMark.Stores.Tags;

namespace WitnessMark.Stores.Keeping;

/// <summary>Everything the stores keep beside the tree: one shape for what may be changed, one for what was seen.</summary>
public interface IStoresDesk
{
    IDecisions<MustPrecede> Precedences { get; }

    IDecisions<Firm> Firms { get; }

    IDecisions<Quote> Quotes { get; }

    IDecisions<Order> Orders { get; }

    IDecisions<Consignment> Consignments { get; }

    IDecisions<Place> Places { get; }

    IDecisions<TypedShape> Shapes { get; }

    /// <summary>What a borrowed sample may go back without.</summary>
    IDecisions<NotNeeded> NotNeeded { get; }

    IDecisions<IntentChoices> Intentions { get; }

    IDecisions<SamplePhotograph> Photographs { get; }

    IDecisions<PictureLayer> PictureLayers { get; }

    IDecisions<PicturePair> PicturePairs { get; }

    IFacts<CameOff> CameOff { get; }

    IFacts<PutBack> PutBack { get; }

    IFacts<ConditionSeen> Conditions { get; }

    IFacts<RouteChosen> RoutesChosen { get; }

    IFacts<Delivery> Deliveries { get; }

    IFacts<RateOfExchange> Rates { get; }

    IFacts<ConsignmentReturn> Returns { get; }

    IFacts<GivenBack> GivenBack { get; }

    IFacts<Moved> Moves { get; }

    IFacts<TagCode> Tags { get; }

    IFacts<Note> Notes { get; }

    IFacts<PictureTaken> PicturesTaken { get; }

    IFacts<PictureSaid> PicturesSaid { get; }

    /// <summary>Corrections of all of these.</summary>
    IFacts<TakenBack> TakenBack { get; }
}
