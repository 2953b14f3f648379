using System.Text.Json;
using System.Text.Json.Serialization;
using WitnessMark.DrawingOffice.Drafting.Paper;
using WitnessMark.Maths.Units;
using WitnessMark.Web.Client.DrawingOffice.Measure;
using WitnessMark.Web.Client.Shell;
using WitnessMark.Web.Client.Shell.Settings;
using PrintPaper = WitnessMark.PrintRoom.Paper.PaperSize;

namespace WitnessMark.Web.Client.DrawingOffice.Sheets;

/// <summary>How the person wants this sample's sheets; kept in this browser.</summary>
/// <param name="Thickness">As written: <c>16 SWG</c>.</param>
/// <param name="Units">mm, inch or fraction.</param>
/// <param name="Bend">The bend allowance by name.</param>
public sealed record SheetWishes(
    string Number = "", string Material = "", string Thickness = "", string DrawnBy = "", string Units = "mm", string Paper = "A4", string Bend = "din6935", int Quantity = 1)
{
    public LengthStyle Style => Units switch { "inch" => LengthStyle.DecimalInches(), "fraction" => LengthStyle.FractionInches(), _ => LengthStyle.Millimetres() };

    public PrintPaper PrintPaper => Paper == "A3" ? PrintPaper.A3 : PrintPaper.A4;

    public TitleFields Title(SampleBench bench, DateOnly today) => new(bench.Sample.Title, Number)
    {
        Material = Material,
        Thickness = Thickness,
        DrawnBy = DrawnBy,
        Date = today,
        MeasuredFrom = bench.Sample.Title,
    };

    public static SheetWishes Open(PageScript page, Guid sample)
    {
        try
        {
            return page.Kept(Key(sample)) is { } text && JsonSerializer.Deserialize(text, WishesJson.Default.SheetWishes) is { } kept ? kept : Usual;
        }
        catch (JsonException)
        {
            return Usual;
        }
    }

    /// <summary>A sample's drawings begin in the units that the pages show.</summary>
    static SheetWishes Usual => new(Units: LengthsShown.As switch { LengthsIn.DecimalInches => "inch", LengthsIn.FractionInches => "fraction", _ => "mm" });

    public void Keep(PageScript page, Guid sample) => page.Keep(Key(sample), JsonSerializer.Serialize(this, WishesJson.Default.SheetWishes));

    static string Key(Guid sample) => $"wm.sheets.{sample:N}";
}

[JsonSourceGenerationOptions(JsonSerializerDefaults.Web, IgnoreReadOnlyProperties = true)]
[JsonSerializable(typeof(SheetWishes))]
sealed partial class WishesJson : JsonSerializerContext;
