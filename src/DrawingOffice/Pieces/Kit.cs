using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.PrintRoom.Pictorial;

namespace WitnessMark.DrawingOffice.Pieces;

/// <summary>All that is needed to make one shape: what is cut, what it is made over, how it is joined, in what order, and what to beware of.</summary>
/// <param name="Pieces">Of sheet; empty for a shape that asks for none (a setting tool turned from bar).</param>
public sealed record Kit(string Title, ImmutableArray<Piece> Pieces)
{
    /// <summary>The finished shape, closed; null when there is nothing to see.</summary>
    public Body? Shape { get; init; }

    public ImmutableArray<Former> Formers { get; init; } = [];

    public ImmutableArray<Seam> Seams { get; init; } = [];

    /// <summary>The work in its order, a plain sentence each.</summary>
    public ImmutableArray<string> Steps { get; init; } = [];

    /// <summary>Figures to work from: heights, angles, strains, a slip-gauge stack.</summary>
    public ImmutableArray<Listing> Listings { get; init; } = [];

    /// <summary>The flat shape with what it stretches and shrinks, when it is made in another number of pieces; null for none.</summary>
    public Piece? Strained { get; init; }

    public ImmutableArray<Caution> Cautions { get; init; } = [];
}

/// <summary>A former, die or setting tool to be made first.</summary>
/// <param name="Material">In words, e.g. "hardwood or 18 mm plywood, edges hard".</param>
/// <param name="Shape">Closed, mm.</param>
/// <param name="Words">How it is used.</param>
public sealed record Former(string Name, string Material, Body Shape, string Words)
{
    /// <summary>Flat plates that it is built of or checked with, cut like any piece.</summary>
    public ImmutableArray<Piece> Templates { get; init; } = [];
}

public enum SeamKind { Butt, Fillet, Corner, Plug }

/// <summary>A weld.</summary>
/// <param name="Between">The pieces it joins, in words.</param>
/// <param name="Length">Of weld metal along the seam, mm; of plug welds, along their row.</param>
/// <param name="Size">Throat of a butt or corner weld, leg of a fillet, hole of a plug, mm.</param>
/// <param name="RootGap">mm.</param>
/// <param name="Count">Of plugs; 1 for a seam.</param>
/// <param name="Words">Preparation, order and the rule it follows.</param>
public sealed record Seam(string Id, string Between, SeamKind Kind, double Length, double Size, double RootGap, int Count, string Words);

/// <summary>A small table as printed and shown: first row of heads, figures already written with their units.</summary>
public sealed record Listing(string Title, ImmutableArray<string> Heads, ImmutableArray<ImmutableArray<string>> Rows);
