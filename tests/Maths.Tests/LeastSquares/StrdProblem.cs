using System.Globalization;
using System.Text.RegularExpressions;
using WitnessMark.Maths.LeastSquares;

namespace WitnessMark.Maths.Tests.LeastSquares;

/// <summary>One of NIST's nonlinear regression problems, read from its file whole: starts, certified answers and data.</summary>
sealed class StrdProblem : IResiduals
{
    /// <summary>The models as the files state them; b counts from 0 here.</summary>
    static readonly Dictionary<string, Func<Dual[], double, Dual>> Models = new()
    {
        ["Misra1b"] = (b, x) => b[0] * (1 - Dual.Pow(1 + b[1] * x / 2, -2)),
        ["DanWood"] = (b, x) => b[0] * Dual.Pow(x, b[1]),
        ["BoxBOD"] = (b, x) => b[0] * (1 - Dual.Exp(-b[1] * x)),
        ["Rat42"] = (b, x) => b[0] / (1 + Dual.Exp(b[1] - b[2] * x)),
        ["Rat43"] = (b, x) => b[0] / Dual.Pow(1 + Dual.Exp(b[1] - b[2] * x), 1 / b[3]),
        ["MGH09"] = (b, x) => b[0] * (x * x + x * b[1]) / (x * x + x * b[2] + b[3]),
        ["MGH10"] = (b, x) => b[0] * Dual.Exp(b[1] / (x + b[2])),
        ["MGH17"] = (b, x) => b[0] + b[1] * Dual.Exp(-x * b[3]) + b[2] * Dual.Exp(-x * b[4]),
        ["Eckerle4"] = (b, x) => (x - b[2]) / b[1] is var t ? b[0] / b[1] * Dual.Exp(-0.5 * t * t) : default,
        ["Lanczos3"] = (b, x) => b[0] * Dual.Exp(-b[1] * x) + b[2] * Dual.Exp(-b[3] * x) + b[4] * Dual.Exp(-b[5] * x),
        ["Thurber"] = (b, x) => (b[0] + x * (b[1] + x * (b[2] + x * b[3]))) / (1 + x * (b[4] + x * (b[5] + x * b[6]))),
        ["Roszman1"] = (b, x) => b[0] - b[1] * x - Dual.Atan(b[2] / (x - b[3])) / Math.PI,
        ["Bennett5"] = (b, x) => b[0] * Dual.Pow(b[1] + x, -1 / b[2]),
    };

    readonly Func<Dual[], double, Dual> _model;
    readonly double[] _x;
    readonly double[] _y;

    StrdProblem(string name, string[] lines)
    {
        _model = Models[name];
        var parameters = lines.Where(l => Regex.IsMatch(l, @"^\s*b\d+ =")).Select(l => Numbers(l[(l.IndexOf('=') + 1)..])).ToArray();
        Starts = [[.. parameters.Select(p => p[0])], [.. parameters.Select(p => p[1])]];
        Certified = [.. parameters.Select(p => p[2])];
        CertifiedStd = [.. parameters.Select(p => p[3])];
        CertifiedSum = Numbers(lines.First(l => l.StartsWith("Residual Sum of Squares:", StringComparison.Ordinal))[24..])[0];
        var data = lines.Skip(Array.FindLastIndex(lines, l => l.StartsWith("Data:", StringComparison.Ordinal)) + 1).Where(l => l.Length > 0).Select(Numbers).ToArray();
        (_y, _x) = ([.. data.Select(d => d[0])], [.. data.Select(d => d[1])]);
        Jacobian = new SparseRows([.. _x.Select(_ => Enumerable.Range(0, Certified.Length).ToArray())], Certified.Length);
    }

    public static IEnumerable<string> Names => Models.Keys;

    public double[][] Starts { get; }

    public double[] Certified { get; }

    public double[] CertifiedStd { get; }

    public double CertifiedSum { get; }

    public int Freedom => _x.Length - Certified.Length;

    public SparseRows Jacobian { get; }

    public static StrdProblem Load(string name) =>
        new(name, File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "truth", "nist-strd", name + ".dat")));

    public void Evaluate(ReadOnlySpan<double> x, Span<double> residuals)
    {
        var b = x.ToArray().Select(v => (Dual)v).ToArray();
        for (var r = 0; r < _x.Length; r++) residuals[r] = _model(b, _x[r]).Value - _y[r];
    }

    public void Linearise(ReadOnlySpan<double> x, Span<double> residuals)
    {
        Evaluate(x, residuals);
        var b = x.ToArray().Select(v => (Dual)v).ToArray();
        for (var p = 0; p < b.Length; p++)
        {
            var keep = b[p];
            b[p] = keep with { Rate = 1 };
            for (var r = 0; r < _x.Length; r++) Jacobian.ValuesOf(r)[p] = _model(b, _x[r]).Rate;
            b[p] = keep;
        }
    }

    static double[] Numbers(string line) =>
        [.. line.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(t => double.Parse(t, NumberStyles.Float, CultureInfo.InvariantCulture))];
}
