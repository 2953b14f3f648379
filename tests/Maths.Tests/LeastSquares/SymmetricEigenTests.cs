using CsCheck;
using MathNet.Numerics.LinearAlgebra;
using WitnessMark.Maths.LeastSquares;
using WitnessMark.Tests;

namespace WitnessMark.Maths.Tests.LeastSquares;

[Truth(Grade.SecondImplementation, "MathNet.Numerics 5.0.0, symmetric eigenvalues")]
public class SymmetricEigenTests
{
    [Fact]
    public void Eigenvalues_agree_and_vectors_are_orthonormal() => Gen.Int[0, 1_000_000].Sample(seed =>
    {
        var chance = new Chance((ulong)seed);
        var n = 1 + chance.Below(30);
        var a = Matrix<double>.Build.Dense(n, n, (_, _) => chance.Normal());
        a += a.Transpose();
        var (values, vectors) = SymmetricEigen.Of(a.ToArray());
        var v = Matrix<double>.Build.DenseOfArray(vectors);
        var slack = 1e-13 * (1 + a.FrobeniusNorm());
        foreach (var (ours, theirs) in values.Zip(a.Evd(Symmetricity.Symmetric).EigenValues.Select(z => z.Real).Order())) Assert.Equal(theirs, ours, slack);
        Assert.True((v.TransposeThisAndMultiply(v) - Matrix<double>.Build.DenseIdentity(n)).FrobeniusNorm() < slack);
        Assert.True((a * v - v * Matrix<double>.Build.DenseOfDiagonalArray(values)).FrobeniusNorm() < slack);
    }, iter: 100, threads: 1);
}
