using System.Collections.Immutable;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Sections;

/// <summary>A stretch of wall between two nodes, or a join across two sheets that has no metal of its own.</summary>
/// <param name="Thickness">mm; 0 for a join.</param>
/// <param name="Join">Its place in the profile's list; -1 for a wall.</param>
readonly record struct Wall(int From, int To, Side Line, double Thickness, int Join)
{
    /// <summary>∫ds/t; nothing for a join.</summary>
    public double Slack => Thickness > 0 ? Line.Length / Thickness : 0;

    /// <summary>∫ f(place) t ds.</summary>
    public double Sum(Func<Vec2, double> f)
    {
        var line = Line;
        return Thickness > 0 ? Thickness * line.Length * Gauss.Sum(line.Sweep, s => f(line.At(s))) : 0;
    }
}

/// <summary>
/// The middle lines of a section as walls between nodes, a tree that reaches every node, and one ring of walls for each wall outside the tree:
/// as many as the section has cells.
/// </summary>
sealed class Network
{
    Network(int nodes, ImmutableArray<Wall> walls)
    {
        (Nodes, Walls) = (nodes, walls);
        (Order, Reached) = Grow(nodes, walls);
        var inTree = Reached.Where(w => w >= 0).ToHashSet();
        Rings = [.. Enumerable.Range(0, walls.Length).Where(w => !inTree.Contains(w)).Select(Ring)];
    }

    public int Nodes { get; }

    public ImmutableArray<Wall> Walls { get; }

    /// <summary>Nodes from the first outwards; fewer than all when a strip is not joined.</summary>
    public ImmutableArray<int> Order { get; }

    /// <summary>By which wall the tree reaches a node; -1 for the first and for nodes out of reach.</summary>
    public int[] Reached { get; }

    /// <summary>For each cell and wall +1 or -1 when its ring runs along or against the wall, else 0. The first entry that is not 0 of the closing wall is +1.</summary>
    public ImmutableArray<double[]> Rings { get; }

    public static Parsed<Network> Of(Profile profile)
    {
        var walls = ImmutableArray.CreateBuilder<Wall>();
        var cuts = Cuts.Of(profile);
        if (cuts.Refusal is { } refusal) return refusal;
        var nodes = 0;
        var ends = new Dictionary<(int Join, int Strip), (int Node, Vec2 At)>();
        for (var s = 0; s < profile.Strips.Length; s++)
        {
            var strip = profile.Strips[s];
            var first = nodes++;
            var here = first;
            for (var side = 0; side < strip.Middle.Count; side++)
            {
                var rest = strip.Middle[side];
                var gone = 0.0;
                foreach (var cut in cuts.Value.Where(c => c.Strip == s && c.Side == side).OrderBy(c => c.Share))
                {
                    var share = gone < 1 ? (cut.Share - gone) / (1 - gone) : 0;
                    if (share * rest.Length > Profile.Same)
                    {
                        walls.Add(new(here, nodes, rest.To(share), strip.Thickness, -1));
                        (here, rest, gone) = (nodes++, rest.From(share), cut.Share);
                    }
                    ends[(cut.Join, s)] = (here, rest.A);
                }
                if (rest.Length <= Profile.Same) continue;
                var last = strip.Closed && side == strip.Middle.Count - 1;
                walls.Add(new(here, last ? first : nodes, rest, strip.Thickness, -1));
                here = last ? first : nodes++;
            }
        }
        for (var j = 0; j < profile.Joins.Length; j++)
        {
            var (a, b) = (ends[(j, profile.Place(profile.Joins[j].First))], ends[(j, profile.Place(profile.Joins[j].Second))]);
            walls.Add(new(a.Node, b.Node, new(a.At, b.At, 0), 0, j));
        }
        var made = new Network(nodes, walls.ToImmutable());
        if (made.Order.Length < nodes) return Refusal.Of("joins", $"{profile.Joins.Length}", $"each strip must be joined to the others; {made.Loose(profile)} hangs free");
        return made;
    }

    string Loose(Profile profile)
    {
        // Walls stand in the order of their strips.
        var reached = Order.ToHashSet();
        var line = Walls.First(w => !reached.Contains(w.From)).Line;
        return profile.Strips.MinBy(s => Enumerable.Range(0, s.Middle.Count).Min(i => s.Middle[i].At(s.Middle[i].Nearest(line.A)).DistanceTo(line.A)))!.Name;
    }

    static (ImmutableArray<int>, int[]) Grow(int nodes, ImmutableArray<Wall> walls)
    {
        var at = walls.Select((w, i) => (w, i)).SelectMany(x => new[] { (Node: x.w.From, x.i), (Node: x.w.To, x.i) }).ToLookup(x => x.Node, x => x.i);
        var reached = Enumerable.Repeat(-1, nodes).ToArray();
        var order = ImmutableArray.CreateBuilder<int>(nodes);
        var seen = new bool[nodes];
        seen[0] = true;
        order.Add(0);
        for (var k = 0; k < order.Count; k++)
            foreach (var w in at[order[k]])
            {
                var other = walls[w].From == order[k] ? walls[w].To : walls[w].From;
                if (seen[other]) continue;
                (seen[other], reached[other]) = (true, w);
                order.Add(other);
            }
        return (order.ToImmutable(), reached);
    }

    double[] Ring(int closing)
    {
        var ring = new double[Walls.Length];
        // Up from both ends to the first node: what both paths share cancels.
        Climb(Walls[closing].To, 1, ring);
        Climb(Walls[closing].From, -1, ring);
        ring[closing] = 1;
        return ring;
    }

    void Climb(int node, double sign, double[] ring)
    {
        for (var w = Reached[node]; w >= 0; w = Reached[node])
        {
            var up = Walls[w].To == node;
            ring[w] += up ? -sign : sign;
            node = up ? Walls[w].From : Walls[w].To;
        }
    }
}
