using WitnessMark.Browser.Pictures;
using WitnessMark.Browser.Stores;
using WitnessMark.FrontOffice.MarkPicture;
using WitnessMark.FrontOffice.MeasureSolid;
using WitnessMark.FrontOffice.TakeInVehicle;
using WitnessMark.Records;
using WitnessMark.Stores.Notes;
using WitnessMark.Stores.Photographs;
using WitnessMark.Stores.Shapes;
using WitnessMark.Stores.Tags;

namespace WitnessMark.Browser.Shell;

/// <summary>A host with the demonstration van and something on every page of it: parts off, dealings, a plan, a survey in space, a tag, a note, pictures.</summary>
public sealed class FilledVan : IAsyncLifetime
{
    /// <summary>An arrow at a hole of the plate, as the picture's page keeps it.</summary>
    static readonly string Strokes = StrokesJson.Write([new(StrokeKind.Arrow, Ink.Red, 2, [new(0.5, 0.2), new(0.5, 0.45)])]);

    Shed? _shed;

    public Uri Address => _shed!.Address;

    public TakeInResult Van => _shed!.Van;

    public Guid Vehicle => Van.File.Vehicle.Id;

    public string Code { get; private set; } = "";

    /// <summary>A picture with words, of the dynamo mounting plate.</summary>
    public Guid Taken { get; } = Guid.NewGuid();

    /// <summary>The plate before and after.</summary>
    public Guid Pair { get; } = Guid.NewGuid();

    public async ValueTask InitializeAsync()
    {
        _shed = await Shed.Open();
        await _shed.Fill();
        await Planning.PlannedVan.Plan(_shed.Database, Van);
        var room = await RecordRoom.Open(_shed.Database);
        var desk = room.Desk;
        var id = Guid.Parse(DemoVan.Address(Van, "Rear lamp bracket")[^36..]);
        await desk.Shapes.Save(new TypedShape(id, Vehicle, Van.File.Samples.Single(s => s.Id == id).PartId, StoredSolid.Kind, "Survey in space", SolidExample.Text, Dropped: false), basedOn: 0);
        var at = new DateTimeOffset(2026, 11, 22, 10, 0, 0, TimeSpan.Zero);
        var plate = Van.File.Parts.First(p => p.Name == "Dynamo mounting plate").Id;
        Code = TagSpelling.Of(plate);
        await desk.Tags.Append([new TagCode(Guid.NewGuid(), Vehicle, Code, TagKind.Part, plate, "Dynamo mounting plate", at, "bench")]);
        await desk.Notes.Append([new Note(Guid.NewGuid(), Vehicle, plate, "The lug was bent by a jack, years ago.", at, "bench")]);
        var (rusted, painted) = (await room.Pictures.Keep(new MemoryStream(Scene.Plate(false))), await room.Pictures.Keep(new MemoryStream(Scene.Plate(true))));
        var after = Guid.NewGuid();
        await desk.PicturesTaken.Append(
        [
            new PictureTaken(Taken, Vehicle, plate, rusted, "plate, front", at, "bench"),
            new PictureTaken(after, Vehicle, plate, painted, "plate, painted", at.AddDays(1), "bench"),
        ]);
        await desk.PictureLayers.Save(new PictureLayer(Taken, Vehicle, Strokes), basedOn: 0);
        await desk.PicturePairs.Save(new PicturePair(Pair, Vehicle, plate, Taken, after, "blasted and painted", Dropped: false), basedOn: 0);
    }

    public string Path(string page = "") => _shed!.Path(page);

    public string Part(string name) => _shed!.Part(name);

    public string Sample(string part) => DemoVan.Address(Van, part);

    public ValueTask DisposeAsync() => _shed is null ? default : _shed.DisposeAsync();
}
