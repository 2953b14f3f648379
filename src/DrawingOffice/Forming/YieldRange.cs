using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.Maths;
using WitnessMark.Trade;

namespace WitnessMark.DrawingOffice.Forming;

/// <summary>Yield of a sheet as bought, MPa: not one figure but a range, and with it the spring-back.</summary>
public readonly record struct YieldRange(double Low, double High)
{
    // A standard that states only the most or the least leaves the other end open (from memory: what mills deliver).
    const double LeastOfMost = 0.65;
    const double MostOfLeast = 1.3;

    public double Middle => (Low + High) / 2;

    public static Parsed<YieldRange> Of(Material material) => material.Yield switch
    {
        { Low: { } low, High: { } high } => new YieldRange(low, high),
        { Low: { } low } => new YieldRange(low, MostOfLeast * low),
        { High: { } high } => new YieldRange(LeastOfMost * high, high),
        _ => Refusal.Of("material", material.Name, "choose one that yields before it breaks"),
    };

    /// <summary>What is guessed of the range; null when both ends are known.</summary>
    public static Caution? Guess(Material material) => material.Yield switch
    {
        { Low: not null, High: not null } => null,
        { Low: { } low } => new(CautionKind.OutsideRange,
            $"Of {material.Short()} only the least yield of {low:0} MPa is stated; up to {MostOfLeast * low:0} MPa is reckoned with (from memory). A trial bend tells better.", []),
        { High: { } high } => new(CautionKind.OutsideRange,
            $"Of {material.Short()} only the highest yield of {high:0} MPa is stated; down to {LeastOfMost * high:0} MPa is reckoned with (from memory). A trial bend tells better.", []),
        _ => null,
    };
}
