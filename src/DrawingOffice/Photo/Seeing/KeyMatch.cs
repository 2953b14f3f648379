using WitnessMark.DrawingOffice.Photo.Targets;

namespace WitnessMark.DrawingOffice.Photo.Seeing;

/// <summary>A square that has been told which of the target's it is, and how it is turned.</summary>
/// <param name="Turn">Quarter turns from the square's own axes to the sheet's.</param>
readonly record struct Known(Square Square, int Index, int Turn);

/// <summary>Lays a group of squares on a target every way round and sees where eyes and key agree.</summary>
static class KeyMatch
{
    /// <summary>Squares that must agree. Cause: seven in a row still stand the same way at a few places of the three sheets; the lead below asks for more where they do.</summary>
    const int Least = 7;

    /// <summary>By which the best place must beat the second.</summary>
    const int Lead = 2;

    /// <summary>A square off the frame or with the wrong eye undoes two that agree: a chance pattern is half right.</summary>
    const int Against = 2;

    /// <summary>Null when no place stands out.</summary>
    public static (Target Target, List<Known> Squares)? Of(List<Placed> group, IEnumerable<Target> targets)
    {
        var (best, second) = ((Score: 0, Target: (Target?)null, Turn: 0, X: 0, Y: 0), 0);
        foreach (var target in targets)
            for (var turn = 0; turn < 4; turn++)
            {
                var first = Turned(group[0], turn);
                for (var k = 0; k < target.Count; k++)
                {
                    var cell = target.Cell(k);
                    var (x, y) = (cell.Column - first.X, cell.Row - first.Y);
                    var score = Score(group, target, turn, x, y);
                    if (score > best.Score) (best, second) = ((score, target, turn, x, y), best.Score);
                    else if (score > second) second = score;
                }
            }
        return best.Target is not { } sheet || best.Score < Least || best.Score < second + Lead ? null : (sheet, Laid(group, sheet, best.Turn, best.X, best.Y));
    }

    /// <summary>Every place where all of a group agree; for small groups that a single one cannot tell apart.</summary>
    public static IEnumerable<(Target Target, List<Known> Squares)> All(List<Placed> group, IEnumerable<Target> targets)
    {
        foreach (var target in targets)
            for (var turn = 0; turn < 4; turn++)
            {
                var first = Turned(group[0], turn);
                for (var k = 0; k < target.Count; k++)
                {
                    var cell = target.Cell(k);
                    if (Score(group, target, turn, cell.Column - first.X, cell.Row - first.Y) == group.Count)
                        yield return (target, Laid(group, target, turn, cell.Column - first.X, cell.Row - first.Y));
                }
            }
    }

    static List<Known> Laid(List<Placed> group, Target target, int turn, int x, int y)
    {
        var known = new List<Known>();
        foreach (var p in group)
        {
            var (a, b) = Turned(p, turn);
            var index = target.IndexOf(a + x, b + y);
            if (index >= 0 && target.HasEye(index) == p.Square.Eye) known.Add(new(p.Square, index, (p.Turn + turn) % 4));
        }
        return known;
    }

    static int Score(List<Placed> group, Target target, int turn, int x, int y)
    {
        var score = 0;
        foreach (var p in group)
        {
            var (a, b) = Turned(p, turn);
            var index = target.IndexOf(a + x, b + y);
            score += index >= 0 && target.HasEye(index) == p.Square.Eye ? 1 : -Against;
        }
        return score;
    }

    static (int X, int Y) Turned(Placed p, int turn) => turn switch
    {
        0 => (p.Column, p.Row),
        1 => (-p.Row, p.Column),
        2 => (-p.Column, -p.Row),
        _ => (p.Row, -p.Column),
    };
}
