using System.Collections.Frozen;
using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Survey.Solid;
using WitnessMark.FrontOffice.MeasureSample;

namespace WitnessMark.FrontOffice.MeasureSolid;

/// <summary>A kind of reading on a part in space as people name it, and between which features it can be taken.</summary>
/// <param name="Words">As on a reading sheet: <c>height over pin</c>.</param>
/// <param name="To">Empty where the reading has no second feature.</param>
/// <param name="MayBeZero">A length of nothing can be read: a corner that stands on the plate.</param>
public sealed record SolidRule(SolidReadingKind Kind, string Words, Measure Measure, ImmutableArray<SolidKind> From, ImmutableArray<SolidKind> To, bool MayBeZero = false) : IReadingRule
{
    /// <summary>With its article, for sentences.</summary>
    public string One => $"{("aeiou".Contains(Words[0]) ? "an" : "a")} {Words}";

    /// <summary>As in JSON: <c>height_over_pin</c>.</summary>
    public string Code => Words.Replace(' ', '_');

    public bool IsCondition => Measure is Measure.Touching or Measure.Direction;

    public string Unit => Measure is Measure.Angle or Measure.Direction ? "rad" : "mm";

    public static ImmutableArray<SolidRule> All { get; } = Build();

    public static SolidRule Of(SolidReadingKind kind) => All.First(r => r.Kind == kind);

    /// <summary>The rule that a person or a file names, however spaced; null when there is none.</summary>
    public static SolidRule? Named(string? text) => text is not null && s_byName.TryGetValue(Plain(text), out var rule) ? rule : null;

    static readonly FrozenDictionary<string, SolidRule> s_byName = All.ToFrozenDictionary(r => r.Words);

    static ImmutableArray<SolidRule> Build()
    {
        ImmutableArray<SolidKind> places = [SolidKind.Point, SolidKind.Hole], edge = [SolidKind.Edge], face = [SolidKind.Plane], setUp = [SolidKind.SetUp];
        ImmutableArray<SolidKind> rounds = [SolidKind.Hole, SolidKind.Cylinder], lines = [SolidKind.Edge, SolidKind.Cylinder], standing = [SolidKind.Point, SolidKind.Hole, SolidKind.Plane];
        ImmutableArray<SolidKind> directions = [SolidKind.Plane, SolidKind.Edge, SolidKind.Cylinder, SolidKind.Hole, SolidKind.SetUp], lain = [SolidKind.Plane, SolidKind.Edge, SolidKind.Cylinder, SolidKind.Hole];
        return
        [
            new(SolidReadingKind.Distance, "distance", Measure.Length, places, places),
            new(SolidReadingKind.OverHoles, "outside over holes", Measure.Length, places, places),
            new(SolidReadingKind.BetweenHoles, "inside between holes", Measure.Length, places, places, MayBeZero: true),
            new(SolidReadingKind.LengthAlongEdge, "length along edge", Measure.Length, edge, []),
            new(SolidReadingKind.PointToEdge, "centre to edge", Measure.Length, places, lines, MayBeZero: true),
            new(SolidReadingKind.HoleToEdge, "edge to hole", Measure.Length, places, edge, MayBeZero: true),
            new(SolidReadingKind.AcrossEdges, "across edges", Measure.Length, edge, edge),
            new(SolidReadingKind.PointToPlane, "centre to face", Measure.Length, places, face, MayBeZero: true),
            new(SolidReadingKind.NearSideToPlane, "face to near side", Measure.Length, rounds, face, MayBeZero: true),
            new(SolidReadingKind.FarSideToPlane, "face over far side", Measure.Length, rounds, face),
            new(SolidReadingKind.Depth, "depth", Measure.Length, face, face),
            new(SolidReadingKind.Thickness, "thickness", Measure.Length, face, face),
            new(SolidReadingKind.Height, "height", Measure.Length, standing, setUp, MayBeZero: true),
            new(SolidReadingKind.HeightOverPin, "height over pin", Measure.Length, rounds, setUp),
            new(SolidReadingKind.HeightUnderPin, "height under pin", Measure.Length, rounds, setUp, MayBeZero: true),
            new(SolidReadingKind.Diameter, "diameter", Measure.Length, rounds, []),
            new(SolidReadingKind.Angle, "angle", Measure.Angle, directions, directions),
            new(SolidReadingKind.OnFace, "picked on face", Measure.Place, places, face),
            new(SolidReadingKind.On, "on", Measure.Touching, [SolidKind.Point, SolidKind.Hole, SolidKind.Edge], lain),
            new(SolidReadingKind.Parallel, "parallel", Measure.Direction, directions, directions),
            new(SolidReadingKind.Square, "square", Measure.Direction, directions, directions),
        ];
    }

    static string Plain(string text) =>
        string.Join(' ', text.ToLowerInvariant().Replace("center", "centre").Split([' ', '_', '-'], StringSplitOptions.RemoveEmptyEntries));
}
