using System.Collections.Frozen;
using System.Collections.Immutable;
using System.Text;
using WitnessMark.DrawingOffice.Survey;

namespace WitnessMark.FrontOffice.MeasureSample;

/// <summary>What the value of a reading is.</summary>
public enum Measure
{
    /// <summary>mm.</summary>
    Length,

    /// <summary>Radians.</summary>
    Angle,

    /// <summary>x and y, mm.</summary>
    Place,

    /// <summary>No value: it holds exactly or within ± mm.</summary>
    Touching,

    /// <summary>No value: it holds exactly or within ± radians.</summary>
    Direction,
}

/// <summary>What a rule for one kind of reading says of its value, on a flat part or in space.</summary>
interface IReadingRule
{
    Measure Measure { get; }

    string Words { get; }

    /// <summary>With its article, for sentences.</summary>
    string One { get; }

    bool MayBeZero { get; }
}

/// <summary>A kind of reading as people name it, and between which features it can be taken.</summary>
/// <param name="To">Empty where the reading has no second feature.</param>
/// <param name="MayBeZero">A length of nothing can be read: two sides that meet.</param>
public sealed record KindRule(ReadingKind Kind, Measure Measure, ImmutableArray<FeatureKind> From, ImmutableArray<FeatureKind> To, bool MayBeZero = false) : IReadingRule
{
    /// <summary>As on a reading sheet: <c>centre distance</c>.</summary>
    public string Words { get; } = Kind == ReadingKind.AngleBetweenEdges ? "angle" : Split(Kind, ' ');

    /// <summary>With its article, for sentences: <c>an edge to hole</c>.</summary>
    public string One => $"{("aeiou".Contains(Words[0]) ? "an" : "a")} {Words}";

    /// <summary>As in JSON: <c>centre_distance</c>.</summary>
    public string Code { get; } = Split(Kind, '_');

    public bool IsCondition => Measure is Measure.Touching or Measure.Direction;

    public static ImmutableArray<KindRule> All { get; } = Build();

    public static KindRule Of(ReadingKind kind) => All[(int)kind];

    /// <summary>The rule that a person or a file names, however spaced; null when there is none.</summary>
    public static KindRule? Named(string? text) =>
        text is not null && ByName.TryGetValue(Plain(text), out var rule) ? rule : null;

    static readonly FrozenDictionary<string, KindRule> ByName =
        All.SelectMany(r => new[] { (r.Words, r), (Plain(r.Code), r) })
            .DistinctBy(x => x.Item1)
            .ToFrozenDictionary(x => x.Item1, x => x.Item2);

    static ImmutableArray<KindRule> Build()
    {
        ImmutableArray<FeatureKind> centred = [FeatureKind.Point, FeatureKind.Hole, FeatureKind.Slot, FeatureKind.Arc];
        ImmutableArray<FeatureKind> round = [FeatureKind.Hole, FeatureKind.Point, FeatureKind.Arc];
        ImmutableArray<FeatureKind> curved = [FeatureKind.Edge, FeatureKind.Arc, FeatureKind.Hole];
        ImmutableArray<FeatureKind> hole = [FeatureKind.Hole], edge = [FeatureKind.Edge], slot = [FeatureKind.Slot], arc = [FeatureKind.Arc];
        ImmutableArray<FeatureKind> straight = [FeatureKind.Edge, FeatureKind.Slot];
        return
        [
            new(ReadingKind.CentreDistance, Measure.Length, centred, centred),
            new(ReadingKind.OutsideOverHoles, Measure.Length, round, round),
            new(ReadingKind.InsideBetweenHoles, Measure.Length, round, round, MayBeZero: true),
            new(ReadingKind.EdgeToHole, Measure.Length, round, edge, MayBeZero: true),
            new(ReadingKind.CentreToEdge, Measure.Length, centred, edge, MayBeZero: true),
            new(ReadingKind.LengthAlongEdge, Measure.Length, edge, []),
            new(ReadingKind.AcrossEdges, Measure.Length, edge, edge),
            new(ReadingKind.Diameter, Measure.Length, hole, []),
            new(ReadingKind.SlotWidth, Measure.Length, slot, []),
            new(ReadingKind.SlotLength, Measure.Length, slot, []),
            new(ReadingKind.Radius, Measure.Length, arc, []),
            new(ReadingKind.Chord, Measure.Length, arc, []),
            new(ReadingKind.Rise, Measure.Length, arc, []),
            new(ReadingKind.AngleBetweenEdges, Measure.Angle, straight, straight),
            new(ReadingKind.Picked, Measure.Place, centred, []),
            new(ReadingKind.On, Measure.Touching, centred, [FeatureKind.Edge, FeatureKind.Arc]),
            new(ReadingKind.Parallel, Measure.Direction, straight, straight),
            new(ReadingKind.Square, Measure.Direction, straight, straight),
            new(ReadingKind.Tangent, Measure.Touching, curved, curved),
        ];
    }

    static string Plain(string text) =>
        string.Join(' ', text.ToLowerInvariant().Replace("center", "centre").Split([' ', '_', '-'], StringSplitOptions.RemoveEmptyEntries));

    static string Split(ReadingKind kind, char with)
    {
        var words = new StringBuilder();
        foreach (var c in kind.ToString())
        {
            if (char.IsUpper(c) && words.Length > 0) words.Append(with);
            words.Append(char.ToLowerInvariant(c));
        }
        return words.ToString();
    }
}
