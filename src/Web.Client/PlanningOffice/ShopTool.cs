using System.Collections.Immutable;
using System.Globalization;
using WitnessMark.Maths;
using WitnessMark.Maths.Units;
using WitnessMark.PlanningOffice;

namespace WitnessMark.Web.Client.PlanningOffice;

/// <summary>One figure of a tool as written; lengths in any unit, angles in degrees.</summary>
public sealed class ToolFigure(string name, string words, double value, bool angle = false)
{
    const double Degree = Math.PI / 180;

    public string Name => name;

    public string Words => words;

    public string Written { get; set; } = angle ? (value / Degree).ToString("0.#", CultureInfo.InvariantCulture) : $"{value.ToString("0.###", CultureInfo.InvariantCulture)} mm";

    /// <summary>mm or radians. Throws <see cref="RefusedException"/> when it cannot be understood.</summary>
    public double Read() => angle ? Angles.Read(Written, field: words).Value.Radians : Lengths.Read(Written, field: words).Value.Mm;
}

/// <summary>A tool the shop may have, as the page edits it.</summary>
public sealed class ShopTool(string name, string words, bool there, params ToolFigure[] figures)
{
    public string Name => name;

    public string Words => words;

    public bool There { get; set; } = there;

    public IReadOnlyList<ToolFigure> Figures => figures;

    double this[int i] => figures[i].Read();

    public static ImmutableArray<ShopTool> Of(Shop shop)
    {
        var folder = shop.Folder ?? Shop.Usual.Folder!;
        var vice = shop.Vice ?? Shop.Usual.Vice!;
        var drill = shop.Drill ?? Shop.Usual.Drill!;
        var lathe = shop.Lathe ?? new Lathe("lathe", 180, 500);
        return
        [
            new("folder", "Folder", shop.Folder is not null, new ToolFigure("width", "Longest bend", folder.Width), new ToolFigure("thickness", "Thickest mild steel", folder.MaxThickness), new ToolFigure("angle", "Turns up to, degrees", folder.MaxAngle, angle: true)),
            new("vice", "Vice", shop.Vice is not null, new ToolFigure("jaw", "Jaw width", vice.JawWidth), new ToolFigure("thickness", "Thickest mild steel bent in it", vice.MaxThickness)),
            new("drill", "Drill", shop.Drill is not null, new ToolFigure("diameter", "Largest drill", drill.MaxDiameter)),
            new("lathe", "Lathe", shop.Lathe is not null, new ToolFigure("swing", "Largest diameter", lathe.Swing), new ToolFigure("length", "Between centres", lathe.BetweenCentres)),
        ];
    }

    /// <summary>The shop with its tools as written. Throws <see cref="RefusedException"/> at the first figure that cannot be understood.</summary>
    public static Shop Applied(ImmutableArray<ShopTool> tools, Shop shop)
    {
        ShopTool? Has(string tool) => tools.FirstOrDefault(t => t.Name == tool && t.There);
        return shop with
        {
            Folder = Has("folder") is { } f ? new(shop.Folder?.Name ?? "folder", f[0], f[1], f[2]) : null,
            Vice = Has("vice") is { } v ? new(shop.Vice?.Name ?? "vice", v[0], v[1]) : null,
            Drill = Has("drill") is { } d ? new(shop.Drill?.Name ?? "drill", d[0]) : null,
            Lathe = Has("lathe") is { } l ? new(shop.Lathe?.Name ?? "lathe", l[0], l[1]) : null,
        };
    }
}
