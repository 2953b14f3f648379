using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Sections;
using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.FrontOffice.Typed;
using WitnessMark.Maths;
using WitnessMark.Trade;

namespace WitnessMark.FrontOffice.CompareSections;

/// <summary>A section with its metal and what its joins need.</summary>
public sealed record ReckonedSection(MadeSection Made, ImmutableArray<JoinNeed> Joins, Loads? Loads);

/// <summary>A section alone, or an original and its copy.</summary>
/// <param name="Copy">Null when only one was given.</param>
/// <param name="Rows">Figure by figure; empty without a copy.</param>
public sealed record SectionsResult(ReckonedSection Section, ReckonedSection? Copy, ImmutableArray<Compared> Rows, ImmutableArray<Caution> Cautions)
{
    /// <summary>The copy is no weaker in any figure and its joins carry what makes it whole; null without a copy.</summary>
    public bool? NoWeaker => Copy is { } copy ? Rows.Where(r => r.MoreIsBetter).All(r => r.NoWorse) && copy.Joins.All(j => j.Carries) : null;
}

/// <summary>From typed cross-sections (docs/guide/section.md) to their properties and a plain comparison of original and copy.</summary>
public static class CompareSections
{
    /// <param name="bytes">UTF-8, at most 16 MB.</param>
    public static Parsed<TypedProfile> Read(ReadOnlySpan<byte> bytes)
    {
        try
        {
            return ProfileJson.Read(TextFile.Decode(bytes));
        }
        catch (RefusedException e)
        {
            return e.Refusal;
        }
    }

    /// <param name="section">The original.</param>
    /// <param name="copy">Null for the properties of one section alone.</param>
    public static Parsed<SectionsResult> Run(TypedProfile section, TypedProfile? copy = null)
    {
        var original = Reckon(section);
        if (original.Refusal is { } refusal) return refusal.In("original");
        if (copy is null) return new SectionsResult(original.Value, null, [], [.. SectionCautions.Of(original.Value, null)]);
        // The copy's joins carry what the original is said to.
        var made = Reckon(copy with { Loads = copy.Loads ?? section.Loads });
        if (made.Refusal is { } wrong) return wrong.In("copy");
        return new SectionsResult(original.Value, made.Value, made.Value.Made.Against(original.Value.Made), [.. SectionCautions.Of(original.Value, made.Value)]);
    }

    static Parsed<ReckonedSection> Reckon(TypedProfile typed)
    {
        if (Materials.Find(typed.Material) is not { } material)
            return Refusal.Of("material", typed.Material, $"write one of {string.Join("; ", Materials.All.Select(m => m.Name))}");
        if (material.Yield is { Low: null, High: null }) return Refusal.Of("material", material.Name, "choose one that yields before it breaks; a brittle one is not judged by these figures");
        var properties = SectionProperties.Of(typed.Profile);
        if (properties.Refusal is { } refusal) return refusal;
        var joins = JoinNeeds.Of(typed.Profile, material, typed.Loads);
        return joins.Refusal is { } loose ? loose : new ReckonedSection(new(typed.Profile, properties.Value, material), joins.Value, typed.Loads);
    }
}
