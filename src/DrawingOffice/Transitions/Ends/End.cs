using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.DrawingOffice.Transitions;

/// <summary>The form of one end of a transition in its own plane, about its own middle, mm. All are hollow nowhere.</summary>
public abstract record EndForm;

public sealed record RoundForm(double Diameter) : EndForm;

/// <param name="Width">Along x, mm.</param>
/// <param name="Height">Along y, mm.</param>
public sealed record OvalForm(double Width, double Height) : EndForm;

/// <param name="CornerRadius">0 for sharp corners, mm; half the smaller side gives round ends.</param>
public sealed record BoxForm(double Width, double Height, double CornerRadius) : EndForm;

/// <param name="Corners">Anticlockwise, mm, bulging everywhere.</param>
public sealed record PolygonForm(ImmutableArray<Vec2> Corners) : EndForm;

/// <summary>An end where it stands: its own x and y axes span its plane, z points along the run from the first end to the second.</summary>
public sealed record End(EndForm Form, Motion3 Frame);
