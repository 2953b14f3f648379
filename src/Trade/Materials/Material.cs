using System.Collections.Immutable;

namespace WitnessMark.Trade;

/// <summary>A range of a property. No high: at least the low; no low: at most the high; neither: the material has none.</summary>
public readonly record struct PropertyRange(double? Low, double? High)
{
    /// <summary>The middle, or the one end that is known.</summary>
    public double? Typical => Low is { } l && High is { } h ? (l + h) / 2 : Low ?? High;
}

/// <summary>What a material stands and weighs.</summary>
/// <param name="E">Young's modulus, MPa.</param>
/// <param name="Density">kg/m³.</param>
/// <param name="Yield">Yield or 0.2 % proof stress, MPa.</param>
/// <param name="Ultimate">Ultimate tensile strength, MPa.</param>
/// <param name="Elongation">At break, per cent.</param>
/// <param name="Expansion">Linear, per K.</param>
/// <param name="Source">Of E, Poisson's ratio, density and expansion.</param>
/// <param name="LimitsSource">Of yield, ultimate strength and elongation.</param>
public sealed record Material(
    string Name, string Family, PropertyRange E, double Poisson, double Density, PropertyRange Yield, PropertyRange Ultimate, PropertyRange Elongation, PropertyRange Expansion,
    Source Source, Source LimitsSource, string Note)
{
    public FigureGrade Grade => LimitsSource.Grade;
}

/// <summary>The list of materials a small shop meets.</summary>
public static class Materials
{
    public static ImmutableArray<Material> All { get; } = Table.Read("Materials/materials.csv", row => new Material(
        row["name"], row["family"], Of(row, "e", 1000), row.Number("poisson"), row.Number("density"),
        Of(row, "yield"), Of(row, "uts"), Of(row, "elong"), Of(row, "expand", 1e-6),
        row.Source(), row.Source("limits_source"), row["note"]));

    public static Material? Find(string name) =>
        All.FirstOrDefault(m => m.Name.Equals(name, StringComparison.OrdinalIgnoreCase))
        ?? All.FirstOrDefault(m => m.Name.StartsWith(name, StringComparison.OrdinalIgnoreCase));

    static PropertyRange Of(Row row, string column, double scale = 1) =>
        new(row.NumberOrNone($"{column}_low") * scale, row.NumberOrNone($"{column}_high") * scale);
}
