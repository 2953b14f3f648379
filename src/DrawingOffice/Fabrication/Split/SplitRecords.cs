using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Sheetwork;

namespace WitnessMark.DrawingOffice.Fabrication;

/// <summary>What the shop can do with sheet.</summary>
/// <param name="Folder">Null: everything is hammered in the vice.</param>
/// <param name="ViceWidth">Longest bend between bars in the vice, mm; 0: none.</param>
/// <param name="ViceThickness">Thickest sheet hammered over, mm.</param>
/// <param name="SheetLength">mm.</param>
/// <param name="SheetWidth">mm.</param>
public sealed record SheetShop(Folder? Folder, double ViceWidth, double ViceThickness, double SheetLength, double SheetWidth)
{
    /// <summary>A bench folder, a 150 mm vice with bars, half a sheet of 2,500 × 1,250 mm (common practice; put in your own).</summary>
    public static SheetShop Usual { get; } = new(Folder.Bench, 150, 2, 1250, 1250);
}

/// <summary>What makes work, in minutes (common practice; put in your own).</summary>
/// <param name="PerWeld">Of each mm of easy weld: fit, tack, weld, dress.</param>
/// <param name="Seam">To set, clamp and tack one seam.</param>
/// <param name="Fold">One bend in the folder: mark, set, bend, check.</param>
/// <param name="ViceFold">More, for a bend hammered in the vice.</param>
/// <param name="Piece">One piece more to mark out, cut and find its place by.</param>
public sealed record SplitWork(double PerWeld, double Seam, double Fold, double ViceFold, double Piece)
{
    public static SplitWork Usual { get; } = new(0.10, 6, 4, 8, 12);
}

/// <summary>One way to split a pressing.</summary>
/// <param name="Folded">Joints folded, by index, ascending.</param>
/// <param name="Pieces">Each with its faces folded out of one blank.</param>
/// <param name="Work">Minutes by the weights in use.</param>
/// <param name="WeldLength">mm.</param>
/// <param name="Reasons">Why each joint is welded that might have been folded.</param>
public sealed record SplitChoice(ImmutableArray<int> Folded, ImmutableArray<FoldedPiece> Pieces, double Work, double WeldLength, ImmutableArray<string> Reasons);

/// <summary>One bend made.</summary>
/// <param name="Joint">By index.</param>
/// <param name="Fold">In the folder; null: hammered over a bar in the vice.</param>
public sealed record MakeStep(int Joint, BendStep? Fold);

/// <summary>A piece of a split.</summary>
/// <param name="Faces">By index.</param>
/// <param name="Steps">Its bends in the order of making.</param>
public sealed record FoldedPiece(string Name, ImmutableArray<int> Faces, FaceTree Tree, Blank Blank, ImmutableArray<MakeStep> Steps)
{
    /// <summary>How many bends are hammered in the vice.</summary>
    public int InVice => Steps.Count(s => s.Fold is null);
}

/// <summary>What a search has come to.</summary>
/// <param name="Choices">Best first, each distinct enough from those before.</param>
/// <param name="Proven">The first is the least work there is; false when stopped or out of steps.</param>
/// <param name="Bound">No split is less work than this, minutes.</param>
/// <param name="Steps">Partial splits looked at.</param>
/// <param name="Blanks">Pieces developed and tried against the shop's tools.</param>
public sealed record SplitAnswer(ImmutableArray<SplitChoice> Choices, bool Proven, double Bound, int Steps, int Blanks);

/// <summary>How a search stands, for whoever waits.</summary>
/// <param name="Best">Minutes; infinite before the first.</param>
public readonly record struct SplitProgress(int Steps, double Best, double Bound);
