using WitnessMark.Maths;
using WitnessMark.PrintRoom.Shapes;

namespace WitnessMark.PrintRoom.Cutter;

/// <summary>What stands before the entities: version, units, extent, line types and layers.</summary>
static class DxfHead
{
    public const string Continuous = "CONTINUOUS";
    const string Dashed = "DASHED";
    const string Chain = "CHAIN";
    const int Millimetres = 4;
    const int Metric = 1;

    public static string LineType(Stroke stroke) => stroke switch
    {
        Stroke.Hidden => Dashed,
        Stroke.Centre => Chain,
        _ => Continuous,
    };

    public static void Write(DxfFile file, Sheet sheet)
    {
        var boxes = sheet.Marks.Select(Box.Of).OfType<Box>().ToList();
        var extent = boxes.Count == 0 ? new(0, 0, sheet.Width, sheet.Height) : boxes.Aggregate((a, b) => a.With(b));
        file.Open("HEADER");
        file.Put(9, "$ACADVER").Put(1, "AC1009");
        file.Put(9, "$INSUNITS").Put(70, Millimetres);
        file.Put(9, "$MEASUREMENT").Put(70, Metric);
        file.Put(9, "$EXTMIN").Put(10, new Vec2(extent.Left, extent.Bottom));
        file.Put(9, "$EXTMAX").Put(10, new Vec2(extent.Right, extent.Top));
        file.Close();
        file.Open("TABLES");
        LineTypes(file);
        LayerTable(file, [.. sheet.Marks.Select(m => DxfText.Layer(m.Layer)).Distinct()]);
        file.Close();
    }

    static void LineTypes(DxfFile file)
    {
        file.Put(0, "TABLE").Put(2, "LTYPE").Put(70, 3);
        foreach (var stroke in new[] { Stroke.Outline, Stroke.Hidden, Stroke.Centre })
        {
            var dashes = Pens.Of(stroke).Dashes;
            file.Put(0, "LTYPE").Put(2, LineType(stroke)).Put(70, 0).Put(3, "").Put(72, 65).Put(73, dashes.Length).Put(40, dashes.Sum());
            // A gap is written as a negative length.
            for (var i = 0; i < dashes.Length; i++) file.Put(49, i % 2 == 0 ? dashes[i] : -dashes[i]);
        }
        file.Put(0, "ENDTAB");
    }

    static void LayerTable(DxfFile file, IReadOnlyList<string> layers)
    {
        file.Put(0, "TABLE").Put(2, "LAYER").Put(70, layers.Count);
        foreach (var layer in layers)
            file.Put(0, "LAYER").Put(2, layer).Put(70, 0).Put(62, Colour(layer)).Put(6, Continuous);
        file.Put(0, "ENDTAB");
    }

    /// <summary>Indexed colours, ours: what is cut is in the drawing's own colour (7), the rest stands apart from it.</summary>
    static int Colour(string layer) => layer switch
    {
        Layers.Bends or Layers.Witness => 4,
        Layers.Text => 3,
        Layers.Dimensions or Layers.Centre or Layers.Hidden => 8,
        Layers.Frame or Layers.Check => 9,
        _ => 7,
    };
}
