using WitnessMark.DrawingOffice.Pieces;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Transitions;

/// <summary>How near the flat pieces come to the true shape, mm.</summary>
/// <param name="Triangles">Flats that the shape is taken as; 0 where the development is exact.</param>
/// <param name="Chord">Greatest distance from the true surface or curve.</param>
/// <param name="Short">By which the worse edge falls short once round; 0 where edges are exact.</param>
/// <param name="Refold">Greatest distance of a point from where the flat pieces, folded up again, put it.</param>
public sealed record Accuracy(int Triangles, double Chord, double Short, double Refold);

/// <summary>What is made of what was asked.</summary>
public sealed record Made(Asked Asked, Kit Kit, Accuracy Accuracy)
{
    /// <summary>Lays out any of the shapes of this room.</summary>
    /// <returns>The kit, or in one sentence why there is none.</returns>
    public static Parsed<Made> Of(Asked asked)
    {
        if (asked.Check() is { } refusal) return refusal;
        return asked switch
        {
            AskedCone cone => ConeKit.Of(cone),
            AskedTransition transition => SkinKit.Of(transition),
            AskedElbow elbow => ElbowKit.Of(elbow),
            AskedSaddle saddle => SaddleKit.Of(saddle),
            AskedMitre mitre => MitreKit.Of(mitre),
            _ => Refusal.Of("kind", asked.GetType().Name, "give cone, transition, elbow, saddle or mitre"),
        };
    }
}
