using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Drafting.Dimensions.Distances;
using WitnessMark.DrawingOffice.Drafting.Paper;
using WitnessMark.Maths;
using WitnessMark.PrintRoom;
using WitnessMark.PrintRoom.Shapes;

namespace WitnessMark.DrawingOffice.Drafting.Dimensions;

/// <summary>A dimensioned view at one scale, mm on paper about the part's own origin.</summary>
sealed record PartView(ImmutableArray<Mark> Marks, Box Bounds, ImmutableArray<DimensionItem> Items, IReadOnlyList<Hole> Holes, bool HolesInView, bool Undimensioned)
{
    /// <summary>Up to this many holes carry their diameter in the view; more show their letter only.</summary>
    public const int MostCalledOut = 6;

    /// <summary>Past this many the letters themselves would hide the part.</summary>
    public const int MostLettered = 60;

    public static PartView Draw(FlatPart part, double scale, Knowledge knowledge, Writing writing)
    {
        var board = new Board();
        PartShape.Draw(board, part, scale);
        var holes = Hole.Lettered(part);
        var box = part.Bounds;
        var view = new Box(box.Left * scale, box.Bottom * scale, box.Right * scale, box.Top * scale);
        var list = new Listing(knowledge, writing);
        var (across, acrossHoles) = Linear(board, Side.Under(view), part, scale, holes, list);
        var (up, upHoles) = Linear(board, Side.LeftOf(view), part, scale, holes, list);
        Folds(board, part, scale, writing);
        var angles = Angles.Of(part).ToList();
        foreach (var (corner, angle) in angles.Count <= Angles.Most ? angles : []) Angles.Draw(board, corner, angle, scale, list.Angle(corner, angle));
        Arcs.Draw(board, part, scale, list);
        CallOut(board, holes, scale, writing);
        return new(board.Marks, board.Clear.Bounds, list.Items, holes, acrossHoles && upHoles, across == Manner.OverAll || up == Manner.OverAll);
    }

    static (Manner Manner, bool WithHoles) Linear(Board board, Side side, FlatPart part, double scale, IReadOnlyList<Hole> holes, Listing list)
    {
        var (manner, stations, withHoles) = Choice.Of(part, side.Along, holes);
        var asked = Choice.Dimensions(manner, stations, part.Origin, side.Along);
        (double U, double V) Place(Station s) => (side.U(s.Point * scale), side.V(s.Point * scale) + (s.IsHole ? Past(holes, s, scale) : 0));
        if (manner == Manner.Running)
        {
            var stops = asked.Where(a => !a.Auxiliary).Select(a => (Place(a.B).U, Place(a.B).V, list.Linear(a, side.Along))).ToList();
            Running.Place(board, side, Place(asked[0].A), stops);
            return (manner, withHoles);
        }
        var rows = new Rows(board, side, Place(stations[0]).U, Place(stations[^1]).U);
        for (var i = 0; i < asked.Count; i++)
        {
            var later = asked.Skip(i + 1).SelectMany(a => new[] { Place(a.A).U, Place(a.B).U }).ToHashSet();
            rows.Place(Place(asked[i].A), Place(asked[i].B), list.Linear(asked[i], side.Along), later, manner == Manner.Chain);
        }
        return (manner, withHoles);
    }

    // An extension line starts past the hole's own centre line.
    static double Past(IReadOnlyList<Hole> holes, Station s, double scale) =>
        holes.FirstOrDefault(h => h.Middle == s.Point) is { Between: null } h ? h.Reach * scale + 2 : 0;

    static void Folds(Board board, FlatPart part, double scale, Writing writing)
    {
        foreach (var f in part.Folds)
        {
            var radius = f.InsideRadius > 0 ? $" R{writing.Length(f.InsideRadius, null)}" : "";
            var words = $"{(f.Angle >= 0 ? "up" : "down")} {Writing.Angle(Math.Abs(f.Angle))}{radius}";
            Leader.Beside(board, (f.From + f.To) / 2 * scale, 0, new(words));
        }
    }

    static string Called(Sized size, Writing writing) => size.MadeTo ?? writing.Length(size.Value, size.Std);

    // The leader of a slot points at its right end.
    static Vec2 RoundEnd(Hole h, double scale)
    {
        var along = Vec2.Polar(h.Turn, h.Between!.Value / 2);
        return (h.Middle + (along.X >= 0 ? along : -along)) * scale;
    }

    static void CallOut(Board board, IReadOnlyList<Hole> holes, double scale, Writing writing)
    {
        if (holes.Count > MostLettered) return;
        foreach (var h in holes)
        {
            var (place, rim) = (h.Middle * scale, h.Size.Value / 2 * scale);
            if (holes.Count > MostCalledOut) Leader.Beside(board, place, rim, new(h.Letter));
            else if (h.Between is not { } between) Leader.Led(board, place, rim, new($"{h.Letter} ⌀{Called(h.Size, writing)}"), Leader.EveryWay);
            else Leader.Led(board, RoundEnd(h, scale), rim, new($"{h.Letter} {Called(h.Size, writing)} × {Called(between, writing)} centres"), Leader.EveryWay);
        }
    }
}
