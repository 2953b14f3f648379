using System.Collections.Immutable;

namespace WitnessMark.DrawingOffice.Survey.Taking;

/// <summary>How a tool is held to the part. In the order in which a person works: one way is finished before the next is begun.</summary>
public enum Way { InsideJaws, OutsideJaws, DepthRod, Tape, HeightGauge, RadiusGauge, Protractor }

/// <summary>A tool at hand, held one way.</summary>
/// <param name="Instrument">As on a reading sheet.</param>
/// <param name="Shortest">mm: small jaws do not go into a smaller hole. 0 for a protractor.</param>
/// <param name="Longest">mm. Not looked at for a protractor.</param>
/// <param name="Std">Standard uncertainty, mm (radians for a protractor).</param>
public sealed record BenchTool(string Instrument, Way Way, double Shortest, double Longest, double Std)
{
    /// <summary>
    /// A 150 mm calliper, tape, radius gauges and a protractor. Reaches are common practice: small jaws go into 5 mm, a set of
    /// radius gauges runs from 1 to 25 mm. ± from <see cref="Survey.Instrument.Usual"/>.
    /// </summary>
    public static ImmutableArray<BenchTool> Usual { get; } = [.. Calliper(150), Tape(5000), RadiusGauges, Protractor];

    /// <summary>For a part in space: a height gauge beside them (300 mm, common practice).</summary>
    public static ImmutableArray<BenchTool> UsualInSpace { get; } = [.. Usual, HeightGauge(300)];

    /// <summary>The finest that can be held one of these ways and reaches the value; null when none does. A protractor reaches every angle.</summary>
    internal static BenchTool? Best(ImmutableArray<BenchTool> tools, Way[] ways, double value) => tools
        .Where(t => ways.Contains(t.Way) && (t.Way == Way.Protractor || (t.Shortest <= value && value <= t.Longest)))
        .OrderBy(t => t.Std).ThenBy(t => t.Way).FirstOrDefault();

    public static ImmutableArray<BenchTool> Calliper(double longest) =>
    [
        new("calliper", Way.InsideJaws, 5, longest, StdOf("calliper")),
        new("calliper", Way.OutsideJaws, 0, longest, StdOf("calliper")),
        new("calliper", Way.DepthRod, 0, longest, StdOf("calliper")),
    ];

    public static BenchTool Tape(double longest) => new("tape", Way.Tape, 10, longest, StdOf("tape"));

    public static BenchTool HeightGauge(double longest) => new("height gauge", Way.HeightGauge, 0, longest, StdOf("height gauge"));

    public static BenchTool RadiusGauges => new("radius gauge", Way.RadiusGauge, 1, 25, StdOf("radius gauge"));

    public static BenchTool Protractor => new("protractor", Way.Protractor, 0, 0, StdOf("protractor"));

    static double StdOf(string name) => Survey.Instrument.Usual.First(i => i.Name == name).StandardUncertainty();
}
