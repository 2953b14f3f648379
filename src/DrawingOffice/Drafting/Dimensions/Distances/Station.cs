using System.Collections.Immutable;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Drafting.Dimensions.Distances;

/// <summary>A corner, hole or end of the part along one axis.</summary>
/// <param name="Point">mm on the part.</param>
/// <param name="Name">For the table.</param>
/// <param name="Id">The feature's id, when it has one.</param>
sealed record Place(Vec2 Point, string Name, string? Id, bool IsHole);

/// <summary>A line across the axis that somebody has to find on the metal, with all that lies on it.</summary>
/// <param name="Members">In order along the axis, at least one.</param>
/// <param name="Main">The one its dimension is taken to: the datum, else the one known best.</param>
/// <param name="Nearest">The one nearest the dimensions, where the extension line starts.</param>
sealed record Station(ImmutableArray<Place> Members, Place Main, Place Nearest)
{
    public Vec2 Point => Main.Point;

    /// <summary>Holes by their letters; else corners by their ids; else what it is.</summary>
    public string Name { get; } = NameOf(Members);

    static string NameOf(ImmutableArray<Place> members)
    {
        var telling = members.Where(s => s.IsHole).Select(s => s.Name).ToList();
        if (telling.Count == 0) telling = [.. members.Where(s => s.Id is not null).Select(s => s.Name)];
        if (telling.Count == 0) telling = [members.Select(s => s.Name).MinBy(n => n == "edge")!];
        var names = telling.Distinct().OrderBy(n => n.Length).ThenBy(n => n, StringComparer.Ordinal).ToList();
        return names.Count <= 3 ? string.Join(", ", names) : string.Join(", ", names.Take(3)) + " …";
    }
}
