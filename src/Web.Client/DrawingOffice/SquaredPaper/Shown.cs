using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.Maths;

namespace WitnessMark.Web.Client.DrawingOffice.SquaredPaper;

/// <summary>A feature as the paper shows it: true from the plan where the readings fix it, else as sketched.</summary>
/// <param name="At">mm, y up.</param>
/// <param name="Size">Diameter, radius or slot width, mm; null when nobody has said.</param>
/// <param name="Length">Between a slot's end centres, mm.</param>
/// <param name="True">The readings fix its place.</param>
/// <param name="Loose">The readings touch it but do not fix its place.</param>
public sealed record Shown(Feature Feature, Vec2 At, double Turn, double? Size, double? Length, bool True, bool Loose, Ellipse? Ellipse)
{
    public string Id => Feature.Id;

    public Vec2 SlotEnd(int sign) => At + Vec2.Polar(Turn, sign * (Length ?? 0) / 2);

    /// <summary>Features that have a place; edges through corners follow their corners.</summary>
    public static ImmutableDictionary<string, Shown> All(ImmutableArray<Feature> features, Plan? plan)
    {
        var freedom = Freedom.Of(plan);
        var placed = plan?.Features.ToDictionary(p => p.Id) ?? [];
        var shown = ImmutableDictionary.CreateBuilder<string, Shown>();
        foreach (var f in features)
            if (placed.TryGetValue(f.Id, out var p) && double.IsFinite(p.At.X + p.At.Y))
            {
                var moves = freedom.Moves.ContainsKey(f.Id);
                var size = p.Loose && freedom.Unsized.Contains(f.Id) ? f.SketchSize : p.Size?.Value ?? f.SketchSize;
                shown[f.Id] = new(f, p.At, p.Turn, size, p.Length?.Value ?? f.SketchLength, !moves, moves, p.Loose ? null : p.Ellipse);
            }
            else if (f.Sketch is { } at)
                shown[f.Id] = new(f, at, f.SketchTurn ?? 0, f.SketchSize, f.SketchLength, false, false, null);
        return shown.ToImmutable();
    }
}
