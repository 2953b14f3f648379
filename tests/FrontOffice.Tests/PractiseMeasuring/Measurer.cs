using System.Collections.Immutable;
using System.Globalization;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.FrontOffice.MeasureSample;
using WitnessMark.FrontOffice.PractiseMeasuring;
using WitnessMark.Maths;

namespace WitnessMark.Tests.FrontOffice.PractiseMeasuring;

using PractiseMeasuring = WitnessMark.FrontOffice.PractiseMeasuring.PractiseMeasuring;

/// <summary>A simulated person at a simulated print: reads what is asked with normal scatter, from a seed.</summary>
sealed record Measurer(int Sheet, double Across = 0, double Up = 0)
{
    /// <summary>Scatter as a multiple of what the calliper promises.</summary>
    public double Clumsy { get; init; } = 1;

    public bool ReadsChecks { get; init; } = true;

    /// <summary>How often the whole list is gone through.</summary>
    public int Rounds { get; init; } = 1;

    /// <summary>Number of the step that is misread, from 1, and by how much, mm.</summary>
    public (int Step, double By)? Slip { get; init; }

    public static double Calliper { get; } = Instrument.Usual.First(i => i.Name == "calliper").StandardUncertainty();

    public PracticeRequest Measured()
    {
        var chance = new Chance(1_000_003UL * (ulong)Sheet);
        var (plate, scale) = (PracticePlate.Of(Sheet), new PrintScale(Across, Up));
        var readings = ImmutableArray.CreateBuilder<PracticeReading>();
        for (var round = 0; round < Rounds; round++)
        {
            foreach (var s in PractiseMeasuring.Wanted(Sheet))
            {
                var error = Clumsy * Calliper * chance.Normal() + (Slip is { } slip && slip.Step == s.Number && round == 0 ? slip.By : 0);
                if (s.IsCheck && !ReadsChecks) continue;
                var value = s.IsCheck ? (s.To == "4 in" ? 101.6 : 100) * (1 + (s.From == "up" ? Up : Across))
                    : plate.True(KindRule.Named(s.Kind)!.Kind, s.From, s.To.Length == 0 ? null : s.To, scale);
                readings.Add(new(s.Kind, s.From, s.To, (value + error).ToString("0.0000", CultureInfo.InvariantCulture), "calliper"));
            }
        }
        return new(Sheet, readings.ToImmutable());
    }
}
