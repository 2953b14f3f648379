using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Intent;

namespace WitnessMark.FrontOffice.MakeToSize;

/// <summary>Things off one vehicle, and what is believed of where it comes from.</summary>
public sealed record MakeToSizeRequest(ImmutableArray<Question> Questions)
{
    public OriginPrior Prior { get; init; } = OriginPrior.Unknown;

    public Practice Practice { get; init; } = Practice.Usual;
}

/// <summary>What each was made to, in the order asked.</summary>
public sealed record MakeToSizeResult(ImmutableArray<OriginOdds> Origins, ImmutableArray<MadeTo> Members, ImmutableArray<string> Cautions);

/// <summary>From measured, worn sizes to the sizes that things were made to.</summary>
public static class MakeToSize
{
    /// <exception cref="Maths.RefusedException">A measurement cannot be used.</exception>
    public static MakeToSizeResult Run(MakeToSizeRequest request)
    {
        if (request.Questions.IsEmpty) throw new Maths.RefusedException(Maths.Refusal.Of("measurements", null, "give at least one measured size"));
        var family = Identify.Together(request.Questions, request.Prior, request.Practice);
        return new(family.Origins, family.Members, [.. family.Members.SelectMany(m => m.Cautions).Distinct()]);
    }
}
