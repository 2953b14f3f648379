using WitnessMark.DrawingOffice.Survey;

namespace WitnessMark.FrontOffice.Typed;

/// <summary>Instruments by name, whatever the capitals.</summary>
static class InstrumentList
{
    /// <summary>The usual ones, to be added to or replaced by a person's own.</summary>
    public static Dictionary<string, Instrument> Usual() => Instrument.Usual.ToDictionary(i => i.Name, StringComparer.OrdinalIgnoreCase);
}
