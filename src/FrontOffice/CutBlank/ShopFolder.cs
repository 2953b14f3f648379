using WitnessMark.PlanningOffice;
using Folder = WitnessMark.DrawingOffice.Sheetwork.Folder;

namespace WitnessMark.FrontOffice.CutBlank;

/// <summary>The shop's folder as the drawing office needs it.</summary>
public static class ShopFolder
{
    /// <summary>Width, thickness and angle are the shop's own; beam and blade are those of a usual bench folder. Null when the shop has none.</summary>
    public static Folder? Of(Shop shop) => shop.Folder is { } f
        ? Folder.Bench with { Length = f.Width, MaxThickness = f.MaxThickness, NoseAngle = Math.PI - f.MaxAngle }
        : null;
}
