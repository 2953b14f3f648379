using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Photo.Cameras;
using WitnessMark.DrawingOffice.Photo.Targets;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Photo.Seeing;

/// <summary>The target in a picture: which sheet, its squares, and a first homography from mm to px.</summary>
sealed record FoundTarget(Target Target, ImmutableArray<Known> Squares, double[] Homography);

/// <summary>
/// Finds the target by itself: dark patches, four-cornered ones among them, sides sharpened, neighbours joined to a lattice, the lattice laid
/// on the key. Squares that hang apart (the part lies between) are taken in when the first homography puts them where they are.
/// </summary>
static class FindTarget
{
    /// <summary>Windows of the mean, as shares of the picture's shorter side: for a sheet that fills it, and smaller ones.</summary>
    static readonly double[] s_windows = [0.12, 0.05, 0.25];

    /// <summary>Squares at least for a camera. Cause: fewer stand in one row and hold one direction only.</summary>
    public const int Least = 8;

    const int MostRounds = 8;

    /// <summary>In sides of a square; how far a square may lie from where the others put it.</summary>
    const double Near = 0.4;

    public static Parsed<FoundTarget> Of(Light light, Target? asked, IProgress<double>? progress, CancellationToken stop)
    {
        var by = Squares.Shrink(light);
        var small = light.Smaller(by);
        FoundTarget? best = null;
        var most = 0;
        for (var k = 0; k < s_windows.Length; k++)
        {
            var window = Math.Max(15, (int)(s_windows[k] * Math.Min(small.Width, small.Height)));
            var squares = Squares.Of(light, small, by, window, stop);
            most = Math.Max(most, squares.Count);
            if (Matched(squares, asked) is { } found && found.Squares.Length > (best?.Squares.Length ?? 0)) best = found;
            progress?.Report((k + 1.0) / s_windows.Length);
            // Another window is worth its time only while much of the frame is missing.
            if (best is not null && best.Squares.Length >= 0.7 * best.Target.Count) break;
        }
        if (best is null)
            return Refusal.Of("picture", most == 0 ? "no black squares" : $"{most} black squares", most < Least
                ? "the target sheet must be seen, sharp and with most of its frame in the picture; or pick its corners by hand"
                : $"no {Least} of them stand as on {Sheets(asked)}: show more of the frame, or pick its corners by hand");
        if (best.Squares.Length < Least)
            return Refusal.Of("picture", $"{best.Squares.Length} squares of the target", $"at least {Least} must be seen, on two sides of the frame or more; or pick its corners by hand");
        return best;
    }

    static FoundTarget? Matched(List<Square> squares, Target? asked)
    {
        var targets = asked is null ? Target.All : [asked];
        var groups = Lattice.Of(squares);
        foreach (var group in groups)
            if (KeyMatch.Of(group, targets) is var (target, known)) return Grown(squares, target, known);
        return Pieced(squares, groups, targets);
    }

    /// <summary>
    /// A frame broken into groups too small for the key: every place where a group fits is tried, and the one taken that explains most of the other
    /// squares too, if none other comes near.
    /// </summary>
    static FoundTarget? Pieced(List<Square> squares, List<List<Placed>> groups, IReadOnlyList<Target> targets)
    {
        var (best, second) = ((FoundTarget?)null, 0);
        foreach (var group in groups.Where(g => g.Count is >= 3 and <= 16).Take(4))
            foreach (var (target, known) in KeyMatch.All(group, targets))
            {
                if (Grown(squares, target, known) is not { } found || Same(found, best)) continue;
                if (found.Squares.Length > (best?.Squares.Length ?? 0)) (best, second) = (found, best?.Squares.Length ?? 0);
                else second = Math.Max(second, found.Squares.Length);
            }
        return best is not null && best.Squares.Length >= Least + 2 && best.Squares.Length >= 1.5 * second ? best : null;
    }

    static bool Same(FoundTarget a, FoundTarget? b) => b is not null && a.Target == b.Target && a.Squares.Count(k => b.Squares.Contains(k)) * 2 > a.Squares.Length;

    /// <summary>Squares taken in hold the homography for those further on, until no more come.</summary>
    static FoundTarget? Grown(List<Square> squares, Target target, List<Known> known)
    {
        for (var round = 0; round < MostRounds; round++)
        {
            if (Fit(target, known) is not { } h) return null;
            var more = TakenIn(squares, target, h);
            if (more.Count <= known.Count && round > 0) return new(target, [.. more], h);
            if (more.Count >= known.Count) known = more;
        }
        return Fit(target, known) is { } last ? new(target, [.. known], last) : null;
    }

    static double[]? Fit(Target target, List<Known> known)
    {
        Vec2[] mm = [.. known.SelectMany(k => target.Corners(k.Index))], px = [.. known.SelectMany(CornersOf)];
        return Homography.Of(mm, px);
    }

    /// <summary>The square's corners in the sheet's order.</summary>
    public static IEnumerable<Vec2> CornersOf(Known known) => Enumerable.Range(0, 4).Select(c => known.Square.Corners[(c - known.Turn + 4) % 4]);

    static List<Known> TakenIn(List<Square> squares, Target target, double[] h)
    {
        var known = new List<Known>();
        var taken = new HashSet<Square>();
        for (var index = 0; index < target.Count; index++)
        {
            Vec2[] wanted = [.. target.Corners(index).Select(c => Homography.Map(h, c))];
            var (middle, side) = (Homography.Map(h, target.Middle(index)), wanted[0].DistanceTo(wanted[2]) / Math.Sqrt(2));
            var nearest = squares.Where(s => !taken.Contains(s) && s.Eye == target.HasEye(index)).MinBy(s => s.Middle.DistanceTo(middle));
            if (nearest is null || nearest.Middle.DistanceTo(middle) > Near * side) continue;
            var turn = Enumerable.Range(0, 4).MinBy(t => Enumerable.Range(0, 4).Max(c => nearest.Corners[(c - t + 4) % 4].DistanceTo(wanted[c])));
            if (Enumerable.Range(0, 4).Any(c => nearest.Corners[(c - turn + 4) % 4].DistanceTo(wanted[c]) > Near * side)) continue;
            taken.Add(nearest);
            known.Add(new(nearest, index, turn));
        }
        return known;
    }

    static string Sheets(Target? asked) => asked is null ? "any of the target sheets" : $"the {asked.Name} target sheet";
}
