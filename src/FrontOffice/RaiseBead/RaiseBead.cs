using WitnessMark.DrawingOffice.Beads;
using WitnessMark.FrontOffice.Typed;
using WitnessMark.Maths;
using WitnessMark.Trade;

namespace WitnessMark.FrontOffice.RaiseBead;

/// <summary>A panel to be beaded, flanged and edged, and how it is made.</summary>
public sealed record BeadResult(Material Material, MadePanel Made);

/// <summary>From a panel as it is typed (docs/guide/bead.md) to its blank, formers, order of work and cautions.</summary>
public static class RaiseBead
{
    /// <param name="bytes">UTF-8, at most 16 MB.</param>
    public static Parsed<Panel> Read(ReadOnlySpan<byte> bytes)
    {
        try
        {
            return PanelJson.Read(TextFile.Decode(bytes));
        }
        catch (RefusedException e)
        {
            return e.Refusal;
        }
    }

    public static Parsed<BeadResult> Run(Panel panel)
    {
        if (Materials.Find(panel.Material) is not { } material)
            return Refusal.Of("panel, material", panel.Material, $"write one of {string.Join("; ", Materials.All.Select(m => m.Name))}");
        var made = MadePanel.Of(panel, material);
        return made.Refusal is { } refusal ? refusal : new BeadResult(material, made.Value);
    }
}
