using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Fabrication;

/// <summary>Slip gauges wrung together.</summary>
/// <param name="Blocks">Each once, mm; wear blocks among them, first and last.</param>
/// <param name="Height">Their sum with its standard uncertainty from the grade, mm.</param>
public sealed record SlipStack(string Set, ImmutableArray<double> Blocks, Uncertain Height);

/// <summary>A sine bar set on slips.</summary>
/// <param name="Wanted">Angle, radians.</param>
/// <param name="Exact">Height for it, L sin(angle), mm.</param>
/// <param name="Angle">That the stack really gives, with its standard uncertainty, radians.</param>
public sealed record SineSetting(double Wanted, double Bar, double Exact, SlipStack Stack, Uncertain Angle, ImmutableArray<Caution> Cautions);
