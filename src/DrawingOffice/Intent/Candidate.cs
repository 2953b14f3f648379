using System.Collections.Immutable;

namespace WitnessMark.DrawingOffice.Intent;

/// <summary>A size that the part may have been made to.</summary>
/// <param name="Name">As a person would ask for it over the counter.</param>
/// <param name="Series">The list it stands in; the key of an origin's shares.</param>
/// <param name="Size">mm (radians of an angle).</param>
/// <param name="Mass">
/// How much of its series it holds, per unit of the logarithm of size: an even ladder of step s with share w gives w·s/size.
/// Sizes of every order are thus equally likely beforehand, and a crowded list gains nothing by being crowded.
/// </param>
public sealed record Candidate(string Name, string Series, double Size, double Mass)
{
    /// <summary>Thread pitch, mm.</summary>
    public double? Pitch { get; init; }

    /// <summary>Included flank angle, radians.</summary>
    public double? Flank { get; init; }

    /// <summary>Root diameter of an external, bore of an internal thread, mm.</summary>
    public double? Core { get; init; }

    /// <summary>Where the figures are from and how far they are to be trusted.</summary>
    public string Source { get; init; } = "";

    public double? Of(Facet facet) => facet switch
    {
        Facet.Size => Size,
        Facet.Pitch => Pitch,
        Facet.Flank => Flank,
        _ => Core,
    };

    /// <summary>Alike in every figure: two names for one thing.</summary>
    public bool SameAs(Candidate other) =>
        Near(Size, other.Size) && Near(Pitch, other.Pitch) && Near(Flank, other.Flank) && Near(Core, other.Core);

    // Half a micrometre: tables give three decimals of a millimetre.
    static bool Near(double? a, double? b) => a is { } x && b is { } y ? Math.Abs(x - y) < 0.0005 : a is null && b is null;
}

/// <summary>The sizes worth weighing, and every series that was looked through (also those with no size near).</summary>
public sealed record Shortlist(ImmutableArray<string> Series, ImmutableArray<Candidate> Candidates);
