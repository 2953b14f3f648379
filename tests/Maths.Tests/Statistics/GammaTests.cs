using WitnessMark.Maths.Statistics;
using WitnessMark.Tests;

namespace WitnessMark.Maths.Tests.Statistics;

public class GammaTests
{
    [Theory]
    [Truth(Grade.Published, "Abramowitz and Stegun, Handbook of Mathematical Functions, table 6.1, as restated in a public library of test values")]
    [InlineData(0.01, 0.9943258511915060e2)]
    [InlineData(0.1, 0.9513507698668732e1)]
    [InlineData(0.2, 0.4590843711998803e1)]
    [InlineData(0.4, 0.2218159543757688e1)]
    [InlineData(0.5, 0.1772453850905516e1)]
    [InlineData(1.1, 0.9513507698668732)]
    [InlineData(1.2, 0.9181687423997606)]
    [InlineData(1.3, 0.8974706963062772)]
    [InlineData(1.4, 0.8872638175030753)]
    [InlineData(1.5, 0.8862269254527580)]
    [InlineData(1.8, 0.9313837709802427)]
    [InlineData(4, 6)]
    [InlineData(20, 0.1216451004088320e18)]
    [InlineData(30, 0.8841761993739702e31)]
    public void Function(double a, double value) => Assert.InRange(Math.Exp(Gamma.Log(a)) / value, 1 - 2e-14, 1 + 2e-14);

    [Theory]
    [Truth(Grade.SecondImplementation, "ln Γ in 60-digit decimal arithmetic: Stirling's series above 80")]
    [InlineData(0.001, 6.907178885383853683)]
    [InlineData(0.5, 0.5723649429247000871)]
    [InlineData(1.5, -0.1207822376352452223)]
    [InlineData(2.5, 0.2846828704729191596)]
    [InlineData(3.7, 1.428072326665387922)]
    [InlineData(7, 6.579251212010100995)]
    [InlineData(11.9, 17.25847745059552115)]
    [InlineData(12, 17.50230784587388584)]
    [InlineData(25.5, 56.38916764371994674)]
    [InlineData(100, 359.1342053695753988)]
    [InlineData(1000, 5905.220423209181212)]
    public void Logarithm(double a, double value) => Assert.Equal(value, Gamma.Log(a), 3e-15 + 1e-15 * Math.Abs(value));

    [Theory]
    [Truth(Grade.SecondImplementation, "P and Q by series in 60-digit decimal arithmetic")]
    [InlineData(0.5, 0.3, 5.614219739190001449e-1, 4.385780260809998551e-1)]
    [InlineData(1, 2, 8.646647167633873081e-1, 1.353352832366126919e-1)]
    [InlineData(5, 3, 1.847367554762279337e-1, 8.152632445237720663e-1)]
    [InlineData(5, 12, 9.923996093189330045e-1, 7.600390681066995471e-3)]
    [InlineData(50, 45, 2.468020344001702727e-1, 7.531979655998297273e-1)]
    [InlineData(50, 70, 9.948594975414941061e-1, 5.140502458505893899e-3)]
    [InlineData(200, 180, 7.485803498415958190e-2, 9.251419650158404181e-1)]
    [InlineData(200, 260, 9.999524998755569912e-1, 4.750012444300875643e-5)]
    [InlineData(500, 560, 9.953068340007052306e-1, 4.693165999294769358e-3)]
    public void Regularised_incomplete(double a, double x, double p, double q)
    {
        // Both tails to their own last digits; the exponent a·ln x − x − ln Γ(a) carries the rounding of its largest term.
        var slack = 2e-14 + 2e-16 * (a * Math.Abs(Math.Log(x)) + x);
        var got = Gamma.Regularised(a, x);
        Assert.InRange(got.P / p, 1 - slack, 1 + slack);
        Assert.InRange(got.Q / q, 1 - slack, 1 + slack);
    }

    [Theory, InlineData(-1, 1), InlineData(0, 1), InlineData(2, -1), InlineData(double.NaN, 1), InlineData(1, double.NaN)]
    [Truth(Grade.Property, "out of range is refused, never a number")]
    public void Out_of_range(double a, double x) => Assert.Throws<ArgumentOutOfRangeException>(() => Gamma.Regularised(a, x));
}
