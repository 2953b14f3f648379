using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Fabrication;

/// <summary>A hole of a group to be drilled through a jig.</summary>
/// <param name="At">On the part, mm.</param>
/// <param name="Diameter">mm.</param>
/// <param name="Locates">Already there: the jig's pin enters it.</param>
public sealed record JigHole(string Name, Vec2 At, double Diameter, bool Locates = false);

/// <summary>A drill bush pressed into a jig.</summary>
/// <param name="Bore">mm.</param>
/// <param name="Outside">mm.</param>
/// <param name="Length">mm.</param>
public sealed record Bush(string Hole, Vec2 At, double Bore, double Outside, double Length);
