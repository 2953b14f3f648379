namespace WitnessMark.Trade;

public enum ThreadSeries { Bsw, Bsf, Ba, Unc, Unf, MetricCoarse, MetricFine, Bsp, Cycle, Brass }

/// <summary>A standard screw thread, basic sizes (no allowance or tolerance), mm.</summary>
/// <param name="Name">As ordered: <c>1/4 BSF</c>, <c>2 BA</c>, <c>M8×1</c>, <c>1/4-20 UNC</c>.</param>
/// <param name="Diameter">Outside diameter of the bolt, mm.</param>
/// <param name="Pitch">mm.</param>
/// <param name="TapDrill">Usual tapping drill, mm; none where no table was at hand.</param>
public sealed record ScrewThread(
    string Name, ThreadSeries Series, ThreadForm Form, double Diameter, double Pitch, double? TapDrill, Source Source, Source? TapDrillSource)
{
    public double ThreadsPerInch => 25.4 / Pitch;

    /// <summary>Core (minor) diameter of the bolt, mm.</summary>
    public double Core => Diameter - Form.Core * Pitch;

    /// <summary>Effective (pitch) diameter, mm.</summary>
    public double Effective => Diameter - Form.Effective * Pitch;

    /// <summary>Basic minor diameter of the nut, mm.</summary>
    public double NutMinor => Diameter - Form.NutMinor * Pitch;

    public FigureGrade Grade => Source.Grade;

    /// <summary>Inch threads are told by threads per inch, metric and BA by pitch.</summary>
    public bool ByThreadsPerInch => Series is not (ThreadSeries.Ba or ThreadSeries.MetricCoarse or ThreadSeries.MetricFine);
}
