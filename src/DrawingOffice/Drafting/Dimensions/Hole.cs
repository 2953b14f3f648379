using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Drafting.Dimensions;

/// <summary>A round or long hole under its letter on the drawing.</summary>
/// <param name="Size">Diameter or width.</param>
/// <param name="Between">Distance of a slot's end centres; null for a round hole.</param>
public sealed record Hole(string Letter, string Id, Vec2 Middle, Sized Size, Sized? Between, double Turn)
{
    /// <summary>Half of the largest extent, mm.</summary>
    public double Reach => (Size.Value + (Between?.Value ?? 0)) / 2;

    // Holes whose middles follow one another within this stand in one column, mm.
    const double Column = 1;

    /// <summary>Letters from A on, column by column from the left, each from the bottom up; I and O are left out since they are read as figures.</summary>
    public static IReadOnlyList<Hole> Lettered(FlatPart part)
    {
        var round = part.Holes.Select(h => new Hole("", h.Id, h.Centre, h.Diameter, null, 0));
        var all = round.Concat(part.Slots.Select(s => new Hole("", s.Id, s.Middle, s.Width, s.Between, s.Turn)));
        var sorted = all.OrderBy(h => h.Middle.X).ToList();
        var column = 0;
        var columns = sorted.Select((h, i) => (Hole: h, Column: i > 0 && h.Middle.X - sorted[i - 1].Middle.X > Column ? ++column : column)).ToList();
        var ordered = columns.OrderBy(h => h.Column).ThenBy(h => h.Hole.Middle.Y).Select(h => h.Hole).ToList();
        // A letter that the person gave to a corner or a hole means that one and no other.
        var names = part.Loops.SelectMany(l => l).Select(s => s.CornerId).Concat(ordered.Select(h => h.Id)).ToHashSet();
        var free = Enumerable.Range(0, int.MaxValue).Select(LetterOf).Where(l => !names.Contains(l)).GetEnumerator();
        return [.. ordered.Select(h => h with { Letter = h.Id is [>= 'A' and <= 'Z'] ? h.Id : Next(free) })];
    }

    static string Next(IEnumerator<string> letters)
    {
        letters.MoveNext();
        return letters.Current;
    }

    const string Letters = "ABCDEFGHJKLMNPQRSTUVWXYZ";

    static string LetterOf(int i) => i < Letters.Length ? Letters[i].ToString() : LetterOf(i / Letters.Length - 1) + Letters[i % Letters.Length];
}
