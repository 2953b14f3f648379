using WitnessMark.Browser.Stores;
using WitnessMark.FrontOffice.MeasureSolid;
using WitnessMark.FrontOffice.TakeInVehicle;
using WitnessMark.Records;
using WitnessMark.Stores.Notes;
using WitnessMark.Stores.Shapes;
using WitnessMark.Stores.Tags;

namespace WitnessMark.Browser.Shell;

/// <summary>A host with the demonstration van and something on every page of it: parts off, dealings, a plan, a survey in space, a tag, a note.</summary>
public sealed class FilledVan : IAsyncLifetime
{
    Shed? _shed;

    public Uri Address => _shed!.Address;

    public TakeInResult Van => _shed!.Van;

    public Guid Vehicle => Van.File.Vehicle.Id;

    public string Code { get; private set; } = "";

    public async ValueTask InitializeAsync()
    {
        _shed = await Shed.Open();
        await _shed.Fill();
        await Planning.PlannedVan.Plan(_shed.Database, Van);
        var desk = (await RecordRoom.Open(_shed.Database)).Desk;
        var id = Guid.Parse(DemoVan.Address(Van, "Rear lamp bracket")[^36..]);
        await desk.Shapes.Save(new TypedShape(id, Vehicle, Van.File.Samples.Single(s => s.Id == id).PartId, StoredSolid.Kind, "Survey in space", SolidExample.Text, Dropped: false), basedOn: 0);
        var at = new DateTimeOffset(2026, 11, 22, 10, 0, 0, TimeSpan.Zero);
        var plate = Van.File.Parts.First(p => p.Name == "Dynamo mounting plate").Id;
        Code = TagSpelling.Of(plate);
        await desk.Tags.Append([new TagCode(Guid.NewGuid(), Vehicle, Code, TagKind.Part, plate, "Dynamo mounting plate", at, "bench")]);
        await desk.Notes.Append([new Note(Guid.NewGuid(), Vehicle, plate, "The lug was bent by a jack, years ago.", at, "bench")]);
    }

    public string Path(string page = "") => _shed!.Path(page);

    public string Part(string name) => _shed!.Part(name);

    public string Sample(string part) => DemoVan.Address(Van, part);

    public ValueTask DisposeAsync() => _shed is null ? default : _shed.DisposeAsync();
}
