namespace WitnessMark.Maths.Tests.LeastSquares;

/// <summary>A value with its derivative along one parameter: exact Jacobians for the test problems without writing them out.</summary>
readonly record struct Dual(double Value, double Rate)
{
    public static implicit operator Dual(double value) => new(value, 0);

    public static Dual operator +(Dual a, Dual b) => new(a.Value + b.Value, a.Rate + b.Rate);

    public static Dual operator -(Dual a, Dual b) => new(a.Value - b.Value, a.Rate - b.Rate);

    public static Dual operator -(Dual a) => new(-a.Value, -a.Rate);

    public static Dual operator *(Dual a, Dual b) => new(a.Value * b.Value, a.Rate * b.Value + a.Value * b.Rate);

    public static Dual operator /(Dual a, Dual b) => new(a.Value / b.Value, (a.Rate - a.Value / b.Value * b.Rate) / b.Value);

    public static Dual Exp(Dual a) => new(Math.Exp(a.Value), Math.Exp(a.Value) * a.Rate);

    public static Dual Atan(Dual a) => new(Math.Atan(a.Value), a.Rate / (1 + a.Value * a.Value));

    /// <summary>a to the power b, a positive.</summary>
    public static Dual Pow(Dual a, Dual b)
    {
        var power = Math.Pow(a.Value, b.Value);
        return new(power, power * (b.Rate * Math.Log(a.Value) + b.Value * a.Rate / a.Value));
    }
}
