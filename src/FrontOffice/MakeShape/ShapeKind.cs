using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Pieces;
using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.Maths;
using WitnessMark.Trade;

namespace WitnessMark.FrontOffice.MakeShape;

/// <summary>What a typed shape is made of and how its bends are reckoned.</summary>
/// <param name="Metal">Of all its sheet.</param>
/// <param name="Choice">Which of the ways to make it, 1 the best; beyond the last the last is meant.</param>
public sealed record ShapeWish(Material Metal, BendMethod Bend, int Choice = 1);

/// <param name="Choices">The ways to make it in a line of words each, best first; empty where there is but one.</param>
public sealed record ShapeMade(Kit Kit, ImmutableArray<string> Choices)
{
    public ShapeMade(Kit kit) : this(kit, []) { }
}

/// <summary>A kind of shape that can be typed.</summary>
/// <param name="Key">Kept with the shape; also the CLI command's word.</param>
/// <param name="Words">As the trade calls it.</param>
/// <param name="Says">One sentence that says what it is for.</param>
/// <param name="Examples">Shapes to begin with, as typed, at least one.</param>
/// <param name="Make">Throws <see cref="RefusedException"/> with the sentence that says what is wrong in the text.</param>
public sealed record ShapeKind(string Key, string Words, string Says, ImmutableArray<ShapeExample> Examples, Func<string, ShapeWish, CancellationToken, ShapeMade> Make)
{
    /// <summary>It may take longer than a breath: a search, a mesh.</summary>
    public bool Long { get; init; }

    /// <summary>Holds what is made against a finer reckoning, a sentence each; takes seconds. Null where there is none.</summary>
    public Func<string, ShapeWish, CancellationToken, ImmutableArray<string>>? Check { get; init; }

    /// <summary>What stands in the list of kinds, the commonest first.</summary>
    public static ImmutableArray<ShapeKind> All { get; } =
    [
        Shapes.Rail, Shapes.Transition, Shapes.Bead, Shapes.Split, Shapes.Setting, Figures.Section, Figures.SpringBack, FoldedShape.Kind,
    ];

    /// <exception cref="RefusedException">A kind this house does not know.</exception>
    public static ShapeKind Of(string key) => All.FirstOrDefault(k => k.Key == key)
        ?? throw new RefusedException(Refusal.Of("kind of shape", key, $"choose one of {string.Join(", ", All.Select(k => k.Words))}"));
}

/// <param name="Title">What it shows.</param>
public sealed record ShapeExample(string Title, string Text)
{
    /// <summary>From the demonstration's files, by name.</summary>
    internal static ShapeExample Of(string file)
    {
        using var stream = new StreamReader(typeof(ShapeExample).Assembly.GetManifestResourceStream(file)!);
        var text = stream.ReadToEnd();
        return new(ShapeNode.Read(text).Value["title"]?.Written ?? file, text);
    }
}
