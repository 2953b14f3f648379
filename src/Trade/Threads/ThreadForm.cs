using System.Collections.Immutable;

namespace WitnessMark.Trade;

/// <summary>The shape of a thread; sizes follow from the outside diameter D and the pitch P.</summary>
/// <param name="FlankAngle">Included angle, radians.</param>
/// <param name="Core">Core (bolt minor) diameter is D − Core·P.</param>
/// <param name="Effective">Effective (pitch) diameter is D − Effective·P.</param>
/// <param name="NutMinor">Basic minor diameter of the nut is D − NutMinor·P.</param>
public sealed record ThreadForm(string Name, double FlankAngle, double Core, double Effective, double NutMinor, Source Source)
{
    static ImmutableArray<ThreadForm> All { get; } = Table.Read("Threads/Tables/forms.csv", row => new ThreadForm(
        row["form"], row.Number("flank_degrees") * Math.PI / 180,
        row.Number("core"), row.Number("effective"), row.Number("nut_minor"), row.Source()));

    public static ThreadForm Whitworth { get; } = All.Single(f => f.Name == "Whitworth");

    public static ThreadForm Ba { get; } = All.Single(f => f.Name == "BA");

    public static ThreadForm MetricAndUnified { get; } = All.Single(f => f.Name == "Metric and unified");

    public static ThreadForm Cycle { get; } = All.Single(f => f.Name == "Cycle");

    public double FlankDegrees => FlankAngle * 180 / Math.PI;
}
