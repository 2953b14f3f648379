using System.Collections.Immutable;

namespace WitnessMark.DrawingOffice.Sheetwork;

/// <summary>One fold in the folder.</summary>
/// <param name="Bend">As in <see cref="BendLine.Id"/>.</param>
/// <param name="Clamped">The face under the beam.</param>
/// <param name="UpperSideUp">How the sheet lies: the blade always lifts.</param>
public sealed record BendStep(string Bend, string Clamped, bool UpperSideUp, double Angle)
{
    public string Words => $"{Bend}: clamp {Clamped}, {(UpperSideUp ? "upper" : "lower")} side up, fold {Math.Abs(Angle) * 180 / Math.PI:0.#}°";
}

/// <summary>An order in which a folder can make the bends, or what stands in the way.</summary>
/// <param name="Steps">The order; when not possible, the steps that could be done first.</param>
public sealed record BendOrder(bool Possible, ImmutableArray<BendStep> Steps, ImmutableArray<Caution> Cautions)
{
    /// <summary>Faces tried closely against the machine after which the search gives up and says so: about a second's work.</summary>
    public const int MostTrials = 500_000;

    /// <summary>
    /// Searches backwards from the finished part: a bend that can be made last with all the others made is taken off, and so on. The fewer
    /// bends are made the less stands in the way, so this seldom has to turn back. Every trial is a check of the part's faces, at steps of the
    /// swing of 7.5° or less, against beam, bed and blade.
    /// </summary>
    /// <param name="blank">For the flat lengths of bends not yet made.</param>
    public static BendOrder Find(FaceTree tree, Blank blank, Folder folder) => new BendSearch(tree, blank, folder).Run();
}
