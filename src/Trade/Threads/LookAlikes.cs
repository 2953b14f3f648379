using System.Collections.Immutable;
using System.Globalization;

namespace WitnessMark.Trade;

/// <summary>Two threads that a calliper and a pitch gauge can take for one another.</summary>
/// <param name="Why">What is the same, and what tells them apart.</param>
public sealed record LookAlike(ScrewThread Thread, ScrewThread Other, string Why);

/// <summary>
/// Threads that are taken for one another: diameters within 0.4 mm (a worn or plated crest; the trade's own pairs reach 0.35 mm,
/// 1/4 cycle against M6) and pitches within 2.5 % (2 BA and No.10-32 are 2 % apart). Both limits are common practice, not a standard.
/// </summary>
public static class LookAlikes
{
    public const double DiameterLimit = 0.4;
    public const double PitchLimit = 0.025;

    /// <summary>The other threads that one may be taken for, nearest diameter first.</summary>
    public static ImmutableArray<LookAlike> Of(ScrewThread thread) =>
    [
        .. Threads.All
            .Where(o => o != thread && Alike(thread, o))
            .OrderBy(o => Math.Abs(o.Diameter - thread.Diameter))
            .Select(o => new LookAlike(thread, o, Why(thread, o))),
    ];

    public static bool Alike(ScrewThread a, ScrewThread b) =>
        Math.Abs(a.Diameter - b.Diameter) <= DiameterLimit
        && Math.Abs(a.Pitch - b.Pitch) <= PitchLimit * Math.Max(a.Pitch, b.Pitch);

    static string Why(ScrewThread a, ScrewThread b)
    {
        var diameter = Compare("diameter", "mm", a.Diameter, b.Diameter, 0.005, "0.00");
        var pitch = Compare("pitch", "mm", a.Pitch, b.Pitch, 0.0005, "0.000");
        var flank = Compare("flank angle", "degrees", a.Form.FlankDegrees, b.Form.FlankDegrees, 0.1, "0.#");
        return string.Create(CultureInfo.InvariantCulture, $"{a.Name} and {b.Name}: {diameter}; {pitch}; {flank}.");
    }

    static string Compare(string what, string unit, double a, double b, double same, string format) =>
        Math.Abs(a - b) < same
            ? string.Create(CultureInfo.InvariantCulture, $"same {what}")
            : $"{what} {a.ToString(format, CultureInfo.InvariantCulture)} against {b.ToString(format, CultureInfo.InvariantCulture)} {unit}";
}
