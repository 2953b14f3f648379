using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.PrintRoom.Pictorial;

namespace WitnessMark.DrawingOffice.Beads;

/// <summary>The beaded panel, the former that fits under one bead and the die that fits over it, as closed bodies; arcs within a stated error.</summary>
static class BeadBodies
{
    /// <summary>Greatest distance of a chord from its arc, mm: under what a file finishes to.</summary>
    const double Error = 0.05;

    /// <summary>Cross-sections in a run-out.</summary>
    const int Steps = 12;

    /// <summary>Wood or plate left under and round a bead's shape, mm.</summary>
    public const double Rim = 20;

    public static Body Panel(Panel panel, Rib rib)
    {
        var row = panel.Beads!;
        var line = Row(panel, rib);
        return Loft.Along([.. Stations(row.Bead, panel.Length).Select(s => (s.Y, Ring(line, s.Depth, panel.Thickness)))]);
    }

    /// <summary>Male: lies under the sheet and fills the bead's hollow.</summary>
    public static Body Former(Bead bead, Rib tool, double thickness) => Block(bead, tool, -thickness / 2, -Rim);

    /// <summary>Female: lies over the sheet and takes the bead in.</summary>
    public static Body Die(Bead bead, Rib tool, double thickness, double clearance) => Block(bead, tool, thickness / 2 + clearance, tool.Depth + Rim);

    /// <summary>Cross-section of former or die at full depth, anticlockwise.</summary>
    public static ImmutableArray<Vec2> Section(Rib tool, double off, double level) => Face(tool, off, 1, level);

    static Body Block(Bead bead, Rib tool, double off, double level) =>
        Loft.Along([.. Stations(bead, bead.Length + (bead.RunOut > 0 ? 2 * Rim : 0)).Select(s => (s.Y, Face(tool, off, s.Depth, level)))]);

    /// <summary>The working face set off from mid-thickness, closed by a flat at a level.</summary>
    static ImmutableArray<Vec2> Face(Rib tool, double off, double depth, double level)
    {
        var (flat, last) = (new Vec2(-tool.Chord / 2 - Rim, 0), new Vec2(tool.Chord / 2 + Rim, tool.OneSided ? tool.Depth : 0));
        ImmutableArray<Vec2> face = [.. Samples([flat, .. tool.Line().Flatten(Error), last]).Select(p => Set(p, depth, off))];
        return level < 0
            ? [new(flat.X, level), new(last.X, level), .. face.Reverse()]
            : [.. face, new(last.X, level), new(flat.X, level)];
    }

    static ImmutableArray<Vec2> Row(Panel panel, Rib rib)
    {
        var points = ImmutableArray.CreateBuilder<Vec2>();
        points.Add(Vec2.Zero);
        for (var i = 0; i < panel.Beads!.Count; i++)
            foreach (var p in rib.Line(panel.Beads.Place(i)).Flatten(Error))
                if (p.DistanceTo(points[^1]) > 1e-6) points.Add(p);
        var end = new Vec2(panel.Width, rib.OneSided ? rib.Depth : 0);
        if (end.DistanceTo(points[^1]) > 1e-6) points.Add(end);
        return points.ToImmutable();
    }

    static ImmutableArray<Vec2> Ring(ImmutableArray<Vec2> line, double depth, double thickness)
    {
        var samples = Samples(line).ToArray();
        return [.. samples.Select(p => Set(p, depth, -thickness / 2)), .. samples.Reverse().Select(p => Set(p, depth, thickness / 2))];
    }

    /// <summary>Each corner with the direction of the line through it, the mean of its two chords'.</summary>
    static IEnumerable<(Vec2 At, Vec2 Before, Vec2 After)> Samples(ImmutableArray<Vec2> line)
    {
        for (var i = 0; i < line.Length; i++)
        {
            var (before, after) = (i > 0 ? line[i] - line[i - 1] : line[1] - line[0], i + 1 < line.Length ? line[i + 1] - line[i] : line[^1] - line[^2]);
            yield return (line[i], before, after);
        }
    }

    /// <summary>A corner of the face: the line sunk to a share of its depth and set off square to itself, its chords mitred.</summary>
    static Vec2 Set((Vec2 At, Vec2 Before, Vec2 After) p, double depth, double off)
    {
        static Vec2 Sunk(Vec2 v, double depth) => new(v.X, depth * v.Y);
        var (a, b) = (Sunk(p.Before, depth).Unit, Sunk(p.After, depth).Unit);
        return Sunk(p.At, depth) + off * ((a.Left + b.Left) / (1 + a.Dot(b)));
    }

    /// <summary>Cross-sections along the panel and the share of the bead's depth there.</summary>
    static IEnumerable<(double Y, double Depth)> Stations(Bead bead, double length)
    {
        var (from, to) = ((length - bead.Length) / 2, (length + bead.Length) / 2);
        if (bead.RunOut <= 0) return [(0, 1), (length, 1)];
        var fade = Enumerable.Range(0, Steps + 1).Select(k => bead.RunOut * k / Steps).ToArray();
        IEnumerable<(double Y, double Depth)> up = fade.Select(s => (from + s, RunOut.Depth(s, bead.RunOut)));
        IEnumerable<(double Y, double Depth)> down = fade.Reverse().Select(s => (to - s, RunOut.Depth(s, bead.RunOut)));
        return [.. from > 0 ? [(0.0, 0.0)] : Array.Empty<(double, double)>(), .. up, .. 2 * bead.RunOut < bead.Length ? down : down.Skip(1), .. to < length ? [(length, 0.0)] : Array.Empty<(double, double)>()];
    }
}
