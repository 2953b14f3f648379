using System.Collections.Immutable;
using System.Text.Json;
using System.Text.Json.Serialization;
using WitnessMark.FrontOffice.BeginVehicle;
using WitnessMark.Web.Client.Shell;

namespace WitnessMark.Web.Client.Stores.First;

/// <summary>A vehicle being begun, as typed; kept in the browser until it is done, so that going back or closing loses nothing.</summary>
/// <param name="Systems">Those ticked.</param>
/// <param name="Own">Systems of one's own, one to a line.</param>
public sealed record FirstDraft(string Name, string Maker, string Model, string Year, string Kind, ImmutableArray<string> Systems, string Own, string Parts)
{
    const string Key = "wm.first";

    public static FirstDraft Empty { get; } = new("", "", "", "", VehicleKind.All[0].Name, Ticked(VehicleKind.All[0]), "", "");

    public BeginRequest Request => new(Name, Maker, Model, Year, [.. Systems, .. OwnSystems], Parts);

    IEnumerable<string> OwnSystems => Own.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);

    public FirstDraft As(VehicleKind kind) => this with { Kind = kind.Name, Systems = Ticked(kind) };

    public FirstDraft Turn(string system) => this with { Systems = Systems.Contains(system) ? Systems.Remove(system) : Systems.Add(system) };

    static ImmutableArray<string> Ticked(VehicleKind kind) => [.. kind.Systems.Where(s => s.Ticked).Select(s => s.Name)];

    public static FirstDraft Kept(PageScript page)
    {
        try
        {
            return page.Kept(Key) is { } text ? JsonSerializer.Deserialize(text, FirstJson.Default.FirstDraft) ?? Empty : Empty;
        }
        catch (JsonException)
        {
            return Empty;
        }
    }

    public void Keep(PageScript page) => page.Keep(Key, JsonSerializer.Serialize(this, FirstJson.Default.FirstDraft));

    public static void Forget(PageScript page) => page.Forget(Key);
}

[JsonSourceGenerationOptions(JsonSerializerDefaults.Web, RespectNullableAnnotations = true, RespectRequiredConstructorParameters = true)]
[JsonSerializable(typeof(FirstDraft))]
sealed partial class FirstJson : JsonSerializerContext;
