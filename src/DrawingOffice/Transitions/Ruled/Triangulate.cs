using System.Collections.Immutable;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Transitions;

/// <summary>A skin by flat triangles, with what that costs.</summary>
/// <param name="Chord">Greatest distance of the triangles from the true skin, mm: that of the chords from the rims bounds it.</param>
/// <param name="FirstShort">By which the first edge, laid flat, falls short of the true rim, mm.</param>
/// <param name="SecondShort">The same for the second edge.</param>
public sealed record Triangulated(Strip Strip, ImmutableArray<Element> Elements, double Chord, double FirstShort, double SecondShort);

/// <summary>Chooses as many triangles as a stated error asks for.</summary>
public static class Triangulate
{
    /// <summary>More than this is refused, triangles.</summary>
    public const int Most = 20_000;

    /// <param name="panels">Once round.</param>
    /// <param name="error">Greatest distance from the true skin, and greatest shortfall of either edge once round, mm.</param>
    public static Parsed<Triangulated> Of(Skin skin, ImmutableArray<Panel> panels, double error)
    {
        if (!(error > 0) || !double.IsFinite(error)) return Refusal.Of("error", $"{error}", "give more than 0 mm");
        // The shortfall of a chord goes with its distance from the arc, so one or two steps reach it.
        for (var chord = error; ;)
        {
            var made = At(skin, panels, chord);
            if (made.Refusal is { } refusal) return refusal;
            var worst = Math.Max(made.Value.FirstShort, made.Value.SecondShort);
            if (worst <= error) return made;
            chord *= 0.95 * error / worst;
        }
    }

    /// <param name="panels">Once round, or a part; of a part the shortfalls mean nothing.</param>
    /// <param name="chord">Greatest distance from the true skin, mm.</param>
    public static Parsed<Triangulated> At(Skin skin, ImmutableArray<Panel> panels, double chord)
    {
        var elements = new List<Element> { new(panels[0].FirstFrom, panels[0].SecondFrom) };
        foreach (var p in panels)
        {
            Elements.Add(elements, skin, p, chord);
            // Two planes a hair apart would leave a sliver without a direction of its own.
            if (elements.Count > 2 && Near(skin, elements[^2], elements[^1])) elements.RemoveAt(elements.Count - 2);
            if (elements.Count > Most / 2) return Refusal.Of("error", $"{chord:0.######} mm", $"allow a larger error; this one asks for over {Most} triangles");
        }
        var strip = Strung(skin, elements);
        return new Triangulated(strip, [.. elements], chord, skin.First.Length - Length(strip.First), skin.Second.Length - Length(strip.Second));
    }

    static bool Near(Skin skin, Element a, Element b) =>
        skin.First.At(a.First).DistanceTo(skin.First.At(b.First)) < Sliver && skin.Second.At(a.Second).DistanceTo(skin.Second.At(b.Second)) < Sliver;

    /// <summary>mm.</summary>
    const double Sliver = 1e-6;

    static double Length(ImmutableArray<Vec3> points)
    {
        var sum = 0.0;
        for (var i = 1; i < points.Length; i++) sum += points[i - 1].DistanceTo(points[i]);
        return sum;
    }

    static Strip Strung(Skin skin, List<Element> elements)
    {
        var (first, second, rungs) = (ImmutableArray.CreateBuilder<Vec3>(), ImmutableArray.CreateBuilder<Vec3>(), ImmutableArray.CreateBuilder<Rung>());
        first.Add(skin.First.At(elements[0].First));
        second.Add(skin.Second.At(elements[0].Second));
        rungs.Add(new(0, 0, true));
        for (var i = 1; i < elements.Count; i++)
        {
            var (last, next) = (elements[i - 1], elements[i]);
            var (moveA, moveB) = (next.First > last.First, next.Second > last.Second);
            if (moveA) first.Add(skin.First.At(next.First));
            if (moveB) second.Add(skin.Second.At(next.Second));
            var (a, b) = (first.Count - 1, second.Count - 1);
            // Of the two ways across four points that hardly leave a plane, the one that bulges, as the true skin does.
            if (moveA && moveB) rungs.Add(Bulges(first[a - 1], second[b - 1], first[a], second[b]) ? new(a, b - 1, false) : new(a - 1, b, false));
            if (moveA || moveB) rungs.Add(new(a, b, true));
        }
        return new(first.ToImmutable(), second.ToImmutable(), rungs.ToImmutable());
    }

    // The triangle a0 b0 a1 leaves b1 on its inner side.
    static bool Bulges(Vec3 a0, Vec3 b0, Vec3 a1, Vec3 b1) => (a1 - a0).Cross(b0 - a0).Dot(b1 - a0) <= 0;
}
