using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Drafting.Dimensions.Distances;
using WitnessMark.DrawingOffice.Drafting.Paper;
using WitnessMark.Maths;
using WitnessMark.PrintRoom;
using WitnessMark.PrintRoom.Shapes;

namespace WitnessMark.DrawingOffice.Drafting.Dimensions;

/// <summary>Letters of the holes whose place a dimension in the view gives, along each axis.</summary>
sealed record Given(IReadOnlySet<string> Across, IReadOnlySet<string> Up);

/// <summary>A dimensioned view at one scale, mm on paper about the part's own origin.</summary>
sealed record PartView(ImmutableArray<Mark> Marks, Box Bounds, ImmutableArray<DimensionItem> Items, IReadOnlyList<Hole> Holes, Given Given, bool Undimensioned)
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
        var (under, left) = (Side.Under(view), Side.LeftOf(view));
        var (across, up) = (Choice.Of(part, under.Along, holes, knowledge), Choice.Of(part, left.Along, holes, knowledge));
        Linear(board, under, part, scale, across.InStyleOf(up), list);
        Linear(board, left, part, scale, up.InStyleOf(across), list);
        Folds(board, part, scale, writing);
        var angles = Angles.Of(part).ToList();
        foreach (var (corner, angle) in angles.Count <= Angles.Most ? angles : []) Angles.Draw(board, corner, angle, scale, list.Angle(corner, angle));
        Arcs.Draw(board, part, scale, list);
        CallOut(board, part, holes, scale, writing);
        var given = new Given(across.Given(part.Origin, under.Along).ToHashSet(), up.Given(part.Origin, left.Along).ToHashSet());
        return new(board.Marks, board.Clear.Bounds, list.Items, holes, given, across.Manner == Manner.OverAll || up.Manner == Manner.OverAll);
    }

    static void Linear(Board board, Side side, FlatPart part, double scale, Choice choice, Listing list)
    {
        var asked = choice.Dimensions(part.Origin, side.Along);
        (double U, double V) At(Station s) => (side.U(s.Point * scale), side.V(s.Nearest.Point * scale) + Past(part, s.Nearest, scale));
        if (choice.Manner == Manner.Running)
        {
            var stops = asked.Where(a => !a.Auxiliary).Select(a => (At(a.B).U, At(a.B).V, list.Linear(a, side.Along))).ToList();
            Running.Place(board, side, At(asked[0].A), stops);
            return;
        }
        var rows = new Rows(board, side, At(choice.Stations[0]).U, At(choice.Stations[^1]).U);
        for (var i = 0; i < asked.Count; i++)
        {
            var later = asked.Skip(i + 1).SelectMany(a => new[] { At(a.A).U, At(a.B).U }).ToHashSet();
            rows.Place(At(asked[i].A), At(asked[i].B), list.Linear(asked[i], side.Along), later, choice.Manner == Manner.Chain);
        }
    }

    // An extension line starts past the hole's own centre line.
    static double Past(FlatPart part, Place place, double scale) =>
        place.IsHole && part.Holes.FirstOrDefault(h => h.Centre == place.Point) is { } hole ? hole.Diameter.Value / 2 * scale + PartShape.Past : 0;

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

    static void CallOut(Board board, FlatPart part, IReadOnlyList<Hole> holes, double scale, Writing writing)
    {
        if (holes.Count > MostLettered) return;
        foreach (var h in holes)
        {
            var (place, rim) = (h.Middle * scale, h.Size.Value / 2 * scale);
            if (part.Calls.GetValueOrDefault(h.Id) is { } call)
            {
                if (call.Length == 0) Leader.Beside(board, place, rim, new(h.Letter));
                else Leader.Led(board, place, rim, new($"{h.Letter} {call}"), Leader.EveryWay);
            }
            else if (holes.Count > MostCalledOut) Leader.Beside(board, place, rim, new(h.Letter));
            else if (h.Between is not { } between) Leader.Led(board, place, rim, new($"{h.Letter} ⌀{Called(h.Size, writing)}"), Leader.EveryWay);
            else Leader.Led(board, RoundEnd(h, scale), rim, new($"{h.Letter} {Called(h.Size, writing)} × {Called(between, writing)} centres"), Leader.EveryWay);
        }
    }
}
