using System.Collections.Immutable;

namespace WitnessMark.PlanningOffice;

/// <summary>A size of sheet that is sold, mm.</summary>
public sealed record StockSheet(string Name, double Width, double Height)
{
    public double Area => Width * Height;
}

/// <summary>What the person can buy, editable. The usual list is common practice.</summary>
/// <param name="BarDiameters">Round bar, mm, rising.</param>
/// <param name="Gap">Left between pieces for the cut, mm.</param>
/// <param name="BarAllowance">Taken off the diameter to clean up, mm.</param>
/// <param name="EndAllowance">Bar length lost to each piece for facing and parting, mm.</param>
public sealed record StockList(
    ImmutableArray<StockSheet> Sheets, ImmutableArray<double> BarDiameters, double Gap, double BarAllowance, double EndAllowance)
{
    public static StockList Usual { get; } = new(
        [
            new("300 × 300", 300, 300), new("500 × 250", 500, 250), new("500 × 500", 500, 500), new("1000 × 500", 1000, 500),
            new("2000 × 1000", 2000, 1000), new("8 × 4 ft", 2438.4, 1219.2), new("2500 × 1250", 2500, 1250), new("3000 × 1500", 3000, 1500),
        ],
        [4, 5, 6, 8, 10, 12, 14, 16, 18, 20, 22, 25, 28, 30, 32, 35, 40, 45, 50, 60, 70, 80],
        Gap: 3, BarAllowance: 1, EndAllowance: 8);
}
