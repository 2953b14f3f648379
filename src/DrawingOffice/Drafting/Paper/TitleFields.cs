using System.Collections.Immutable;

namespace WitnessMark.DrawingOffice.Drafting.Paper;

/// <summary>What the title block says. Empty fields print as a dash, so that a gap is seen.</summary>
public sealed record TitleFields(string Title, string PartNumber)
{
    public string Material { get; init; } = "";

    /// <summary>As it is to be called for, e.g. <c>16 SWG (1.63 mm)</c>.</summary>
    public string Thickness { get; init; } = "";

    public string DrawnBy { get; init; } = "";

    public DateOnly? Date { get; init; }

    /// <summary>The sample and survey it was measured from.</summary>
    public string MeasuredFrom { get; init; } = "";

    public string GeneralTolerance { get; init; } = "";

    public Projection Projection { get; init; } = Projection.FirstAngle;

    /// <summary>Printed over the title block in the warning tone, e.g. on a part that carries brakes, steering, springs or lifting gear.</summary>
    public ImmutableArray<string> Cautions { get; init; } = [];

    /// <summary>False on a drawing of designed sizes, which has no ± to speak of.</summary>
    internal bool Spreads { get; init; } = true;

    /// <summary>The sheet itself is there to be measured.</summary>
    internal bool ToBeMeasured { get; init; }
}
