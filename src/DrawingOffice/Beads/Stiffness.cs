using WitnessMark.DrawingOffice.Sections;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.DrawingOffice.Beads;

/// <summary>
/// Stiffness of a panel against bending, as second moment for each mm of width, mm³. Beads stiffen it one way only: against bending that would bend the
/// beads themselves. Square to that it gives a little more than the flat sheet did, as a corrugated sheet does.
/// </summary>
/// <param name="Plain">T³/12, the flat sheet either way.</param>
/// <param name="Along">Beads acting as ribs; exact for the true outline of one pitch.</param>
/// <param name="Across">The panel rolled about an axis along the beads: the same bending moment acts on a longer path (pitch over sheet in a pitch).</param>
public sealed record Stiffness(double Plain, double Along, double Across)
{
    /// <param name="pitch">Panel that one bead serves, mm; at least its chord.</param>
    public static Stiffness Of(Rib rib, double thickness, double pitch)
    {
        var line = rib.Line();
        var flat = (pitch - rib.Chord) / 2;
        var whole = flat <= 1e-9 ? line : new Chain(
            [new Corner(new(line.Start.X - flat, line.Start.Y)), .. line.Corners[..^1], new(line.End), new(new(line.End.X + flat, line.End.Y))]);
        var m = AreaMoments.Of(whole.Edges(thickness)[0]);
        var plain = thickness * thickness * thickness / 12;
        return new(plain, m.Moved(-m.Centroid).YY / pitch, plain * pitch / (pitch + rib.Extra));
    }
}
