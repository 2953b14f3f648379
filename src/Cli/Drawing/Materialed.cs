using System.CommandLine;
using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.Maths;
using WitnessMark.Trade;

namespace WitnessMark.Cli.Drawing;

/// <summary>A material by its name.</summary>
static class Materialed
{
    public static Option<string> Option() => new("--material") { Description = "Material, by the beginning of its name.", DefaultValueFactory = _ => "DC01" };

    public static Material Named(string name) => Materials.Find(name)
        ?? throw new RefusedException(Refusal.Of("--material", name, $"write one of {string.Join("; ", Materials.All.Select(m => m.Name))}"));

    /// <summary>Elongation at its low end, for what is bought is seldom the best of its grade.</summary>
    public static Ductility DuctilityOf(Material material) => new(null, material.Elongation.Low ?? material.Elongation.High);
}
