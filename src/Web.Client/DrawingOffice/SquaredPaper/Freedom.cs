using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.Maths;

namespace WitnessMark.Web.Client.DrawingOffice.SquaredPaper;

/// <summary>What the readings leave free: places that can move, and sizes that nobody has read.</summary>
/// <param name="Moves">For each feature that can move its longest way, as a share of the longest of its group.</param>
/// <param name="Unsized">Features whose place is held but whose size is not.</param>
public sealed record Freedom(ImmutableDictionary<string, Vec2> Moves, ImmutableArray<string> Unsized)
{
    /// <summary>Shares below this are rounding, not motion.</summary>
    const double Still = 0.02;

    public static Freedom None { get; } = new(ImmutableDictionary<string, Vec2>.Empty, []);

    public static Freedom Of(Plan? plan)
    {
        if (plan is null || plan.Loose.IsEmpty) return None;
        var moves = ImmutableDictionary.CreateBuilder<string, Vec2>();
        foreach (var arrow in plan.Loose.SelectMany(g => g.Motions).SelectMany(m => m))
            if (arrow.Move.Length > Math.Max(Still, moves.GetValueOrDefault(arrow.Id).Length)) moves[arrow.Id] = arrow.Move;
        return new(moves.ToImmutable(), [.. plan.Loose.SelectMany(g => g.Ids).Distinct().Where(id => !moves.ContainsKey(id))]);
    }

    /// <summary>The group moves, or only a size in it is missing.</summary>
    public bool Moving(LooseGroup group) => group.Ids.Any(Moves.ContainsKey);
}
