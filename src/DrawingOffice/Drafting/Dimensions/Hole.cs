using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Drafting.Dimensions;

/// <summary>A round or long hole under its letter on the drawing.</summary>
/// <param name="Size">Diameter or width.</param>
/// <param name="Between">Distance of a slot's end centres; null for a round hole.</param>
public sealed record Hole(string Letter, string Id, Vec2 Middle, Sized Size, Sized? Between, double Turn)
{
    /// <summary>Half of the largest extent, mm.</summary>
    public double Reach => (Size.Value + (Between?.Value ?? 0)) / 2;

    /// <summary>Letters from A on, from the left bottom to the right top; I and O are left out since they are read as figures.</summary>
    public static IReadOnlyList<Hole> Lettered(FlatPart part)
    {
        var round = part.Holes.Select(h => new Hole("", h.Id, h.Centre, h.Diameter, null, 0));
        var all = round.Concat(part.Slots.Select(s => new Hole("", s.Id, s.Middle, s.Width, s.Between, s.Turn)));
        return [.. all.OrderBy(h => Math.Round(h.Middle.X, 1)).ThenBy(h => h.Middle.Y).Select((h, i) => h with { Letter = LetterOf(i) })];
    }

    const string Letters = "ABCDEFGHJKLMNPQRSTUVWXYZ";

    static string LetterOf(int i) => i < Letters.Length ? Letters[i].ToString() : LetterOf(i / Letters.Length - 1) + Letters[i % Letters.Length];
}
