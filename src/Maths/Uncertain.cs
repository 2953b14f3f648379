namespace WitnessMark.Maths;

/// <summary>A value with its standard uncertainty (one standard deviation), both in the same unit.</summary>
public readonly record struct Uncertain(double Value, double Std)
{
    /// <summary>Half-width that holds the value in about 95 of 100 cases (coverage factor 2; JCGM 100, 6.3.3).</summary>
    public double Expanded => 2 * Std;
}
