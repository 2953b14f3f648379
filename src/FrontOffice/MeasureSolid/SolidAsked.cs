using System.Collections.Immutable;
using WitnessMark.Maths;

namespace WitnessMark.FrontOffice.MeasureSolid;

/// <summary>A typed sheet in space to be searched for second shapes: plain texts, so that it can be asked of another thread.</summary>
/// <param name="WantedPlusMinus">mm.</param>
public sealed record SolidAsked(string Text, double WantedPlusMinus)
{
    /// <summary>The cautions with second shapes looked for.</summary>
    /// <exception cref="RefusedException">What is typed cannot be adjusted, in the sentence that says why.</exception>
    public ImmutableArray<string> Cautions(CancellationToken stop = default) => Run(searchMirrors: true, stop).Cautions;

    /// <summary>The shape at once; other shapes that fit as well are a longer search.</summary>
    /// <exception cref="RefusedException">What is typed cannot be adjusted.</exception>
    public SolidResult Run(bool searchMirrors = false, CancellationToken stop = default) =>
        MeasureSolid.Run(new(SolidFile.Read(Text).Value) { SearchMirrors = searchMirrors, WantedPlusMinus = WantedPlusMinus }, stop);
}
