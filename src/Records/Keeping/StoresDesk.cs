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

namespace WitnessMark.Records;

sealed class StoresDesk(Func<RecordsDb> open, FactShelf shelf) : IStoresDesk
{
    public IDecisions<MustPrecede> Precedences => new KeptDecisions<MustPrecede>(open);

    public IDecisions<Firm> Firms => new KeptDecisions<Firm>(open);

    public IDecisions<Quote> Quotes => new KeptDecisions<Quote>(open);

    public IDecisions<Order> Orders => new KeptDecisions<Order>(open);

    public IDecisions<Consignment> Consignments => new KeptDecisions<Consignment>(open);

    public IDecisions<Place> Places => new KeptDecisions<Place>(open);

    public IDecisions<TypedShape> Shapes => new KeptDecisions<TypedShape>(open);

    public IDecisions<NotNeeded> NotNeeded => new KeptDecisions<NotNeeded>(open);

    public IDecisions<IntentChoices> Intentions => new KeptDecisions<IntentChoices>(open);

    public IDecisions<SamplePhotograph> Photographs => new KeptDecisions<SamplePhotograph>(open);

    public IDecisions<PictureLayer> PictureLayers => new KeptDecisions<PictureLayer>(open);

    public IDecisions<PicturePair> PicturePairs => new KeptDecisions<PicturePair>(open);

    public IFacts<CameOff> CameOff => new KeptFacts<CameOff>(open, shelf);

    public IFacts<PutBack> PutBack => new KeptFacts<PutBack>(open, shelf);

    public IFacts<ConditionSeen> Conditions => new KeptFacts<ConditionSeen>(open, shelf);

    public IFacts<RouteChosen> RoutesChosen => new KeptFacts<RouteChosen>(open, shelf);

    public IFacts<Delivery> Deliveries => new KeptFacts<Delivery>(open, shelf);

    public IFacts<RateOfExchange> Rates => new KeptFacts<RateOfExchange>(open, shelf);

    public IFacts<ConsignmentReturn> Returns => new KeptFacts<ConsignmentReturn>(open, shelf);

    public IFacts<GivenBack> GivenBack => new KeptFacts<GivenBack>(open, shelf);

    public IFacts<Moved> Moves => new KeptFacts<Moved>(open, shelf);

    public IFacts<TagCode> Tags => new KeptFacts<TagCode>(open, shelf);

    public IFacts<Note> Notes => new KeptFacts<Note>(open, shelf);

    public IFacts<PictureTaken> PicturesTaken => new KeptFacts<PictureTaken>(open, shelf);

    public IFacts<PictureSaid> PicturesSaid => new KeptFacts<PictureSaid>(open, shelf);

    public IFacts<TakenBack> TakenBack => new KeptFacts<TakenBack>(open, shelf);
}
