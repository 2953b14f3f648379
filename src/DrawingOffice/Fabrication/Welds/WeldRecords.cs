using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Fabrication;

/// <summary>How the edges of two sheets meet where they are welded.</summary>
public enum EdgeFit
{
    /// <summary>Inner edges touch, the corner open outside to take the weld.</summary>
    EdgeToEdge,

    /// <summary>The first face runs through to the outside, the second stops against it.</summary>
    Lapped,
}

/// <summary>A straight weld in space.</summary>
/// <param name="From">mm.</param>
public sealed record WeldLine(string Name, Vec3 From, Vec3 To)
{
    public double Length => From.DistanceTo(To);

    public Vec3 At(double along) => From + (To - From) * (along / Length);
}

/// <summary>One tack or one run.</summary>
/// <param name="Seam">By index.</param>
/// <param name="From">Where it is begun, mm along the seam; a tack is a point.</param>
public readonly record struct WeldStep(int Seam, double From, double To);

/// <summary>In what order to tack and to weld so that it pulls least.</summary>
public sealed record WeldOrder(ImmutableArray<WeldStep> Tacks, ImmutableArray<WeldStep> Runs);

/// <summary>Which published practice sizes the plug welds.</summary>
public enum PlugRule { Body, Sheet, Plate }

/// <summary>Plug welds that stand for spot welds.</summary>
/// <param name="Hole">mm.</param>
/// <param name="Pitch">Between middles, mm.</param>
/// <param name="SpotArea">Shear area of the spots that were there, mm².</param>
/// <param name="PlugArea">Shear area of these by the sheet rule's fused diameter, mm².</param>
/// <param name="Words">Which rule, why, and its source.</param>
public sealed record PlugWelds(PlugRule Rule, int Count, double Hole, double Pitch, double SpotArea, double PlugArea, string Words, ImmutableArray<Caution> Cautions);
