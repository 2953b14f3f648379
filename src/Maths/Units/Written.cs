using System.Collections.Immutable;

namespace WitnessMark.Maths.Units;

/// <summary>A length as a person wrote it, read.</summary>
/// <param name="Mm">mm; the mean where repeats are given.</param>
/// <param name="Unit">The unit written, or taken for a bare number.</param>
public sealed record WrittenLength(double Mm, LengthUnit Unit)
{
    /// <summary>The ± written after the value, mm, as it stands: the reader does not know whether it is a tolerance or an uncertainty.</summary>
    public double? PlusMinus { get; init; }

    /// <summary>Every reading of the same thing, mm; one where no repeats are given.</summary>
    public ImmutableArray<double> Repeats { get; init; } = [Mm];

    /// <summary>No unit was written; <see cref="Unit"/> is the spelling's.</summary>
    public bool Bare { get; init; }
}

/// <summary>An angle as a person wrote it, read.</summary>
/// <param name="Radians">The mean where repeats are given.</param>
public sealed record WrittenAngle(double Radians)
{
    /// <summary>The ± written after the value, radians, as it stands.</summary>
    public double? PlusMinus { get; init; }

    /// <summary>Every reading of the same thing, radians; one where no repeats are given.</summary>
    public ImmutableArray<double> Repeats { get; init; } = [Radians];
}
