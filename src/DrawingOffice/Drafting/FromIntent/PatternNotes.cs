using System.Collections.Immutable;
using System.Globalization;
using WitnessMark.DrawingOffice.Drafting.Dimensions;
using WitnessMark.DrawingOffice.Drafting.FromPlan;
using WitnessMark.DrawingOffice.Intent.Patterns;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.Maths;
using WitnessMark.PrintRoom.Shapes;

namespace WitnessMark.DrawingOffice.Drafting.FromIntent;

/// <summary>Patterns as a drawing says them: by the letters of its holes, and by circles and lines in the view.</summary>
sealed class PatternNotes(IntentPlan intent, Plan plan, PlanFrame frame, IReadOnlyList<Hole> holes, Figures figures)
{
    /// <summary>mm that a middle line stands out past the outline.</summary>
    const double Past = 4;

    /// <summary>mm. Cause: half of the last figure written.</summary>
    const double Straight = 0.005;

    /// <summary>One call-out for all holes of a size, at the first of them; the others keep their letter.</summary>
    public ImmutableDictionary<string, string> Calls()
    {
        var calls = ImmutableDictionary.CreateBuilder<string, string>();
        foreach (var group in intent.Held.Where(f => f.Kind == PatternKind.EqualSize))
        {
            var round = holes.Where(h => h.Between is null && group.Features.Contains(h.Id)).ToList();
            if (round.Count < 2) continue;
            foreach (var hole in round) calls[hole.Id] = "";
            calls[round[0].Id] = string.Create(CultureInfo.InvariantCulture, $"{round.Count} × ⌀{figures.Size(round[0].Id) ?? figures.LengthOr(round[0].Size.Value)}");
        }
        return calls.ToImmutable();
    }

    /// <summary>Circles that were found, not those that merely follow. One that would run off the part, through its dimensions, is left to the notes.</summary>
    public ImmutableArray<PitchCircle> PitchCircles(Box box) =>
        [.. Rings().Select(r => r.Circle).Where(c => box.Holds(new Box(c.Centre.X - c.Radius, c.Centre.Y - c.Radius, c.Centre.X + c.Radius, c.Centre.Y + c.Radius)))];

    public ImmutableArray<(Vec2 From, Vec2 To)> MiddleLines(Box box) => [.. Middles().Select(m => MiddleLine(m, box))];

    public IEnumerable<string> Notes()
    {
        foreach (var (f, circle) in Rings())
        {
            var spaced = f.Kind == PatternKind.EqualSteps ? $", {f.Features.Length} equally spaced" : "";
            yield return $"{Letters(f.Features)}: pitch circle ⌀{figures.LengthOr(2 * circle.Radius)}{spaced}.";
        }
        foreach (var f in intent.Held.Where(f => f.Kind == PatternKind.EquallySpaced))
        {
            var (first, last) = (At(f.Features[0]), At(f.Features[^1]));
            var (spaces, whole) = (f.Features.Length - 1, first.DistanceTo(last));
            // A spacing that was forced on places out of line is not the distance between them.
            yield return f.Features.Index().All(p => At(p.Item).DistanceTo(first + (last - first) * p.Index / spaces) < Straight)
                ? $"{Letters(f.Features)}: {spaces} spaces of {figures.LengthOr(whole / spaces)} = {figures.LengthOr(whole)}."
                : $"{Letters(f.Features)}: {spaces} equal spaces {f.About}.";
        }
        foreach (var f in Middles()) yield return $"{Pairs(f)}: even about the {(Across(f) is var across && Math.Abs(across.X) > 0.5 ? "upright" : "level")} middle line.";
        foreach (var u in intent.Undecided) yield return $"Undecided: {u.Words}";
    }

    IEnumerable<(Finding Finding, PitchCircle Circle)> Rings()
    {
        var seen = new List<HashSet<string>>();
        foreach (var f in intent.Held.Where(f => f.Kind is PatternKind.PitchCircle or PatternKind.EqualSteps && f.Standing != Standing.Implied))
        {
            var members = f.Features.ToHashSet();
            if (seen.Exists(s => s.IsSupersetOf(members))) continue;
            seen.Add(members);
            var centre = intent.Of(f.About!) is { } hub ? frame.Of(hub.At) : f.Features.Aggregate(Vec2.Zero, (s, id) => s + At(id)) / f.Features.Length;
            yield return (f, new(centre, At(f.Features[0]).DistanceTo(centre)));
        }
    }

    IEnumerable<Finding> Middles() => intent.Held.Where(f => f.Kind == PatternKind.Symmetric);

    /// <summary>Square to the line between the first pair, through the middle of the pair, right across the part.</summary>
    (Vec2 From, Vec2 To) MiddleLine(Finding f, Box box)
    {
        var along = Math.Abs(Across(f).X) > 0.5 ? new Vec2(1, 0) : new Vec2(0, 1);
        var middle = (At(f.Features[0]) + At(f.Features[1])) / 2;
        return along.X > 0
            ? (new(middle.X, box.Bottom - Past), new(middle.X, box.Top + Past))
            : (new(box.Left - Past, middle.Y), new(box.Right + Past, middle.Y));
    }

    Vec2 Across(Finding f) => (At(f.Features[1]) - At(f.Features[0])).Unit;

    Vec2 At(string id) => frame.Of(plan.Of(id).At);

    /// <summary>Pair by pair as the key lists them; what lies on the line itself stands there with itself.</summary>
    string Pairs(Finding f)
    {
        var ids = f.Key[(f.Key.IndexOf(':') + 1)..].Split('@')[0].Split(',');
        return string.Join(", ", ids.Chunk(2).Select(p => p.Length < 2 || p[0] == p[1] ? Letter(p[0]) : $"{Letter(p[0])} with {Letter(p[1])}"));
    }

    string Letter(string id) => holes.FirstOrDefault(h => h.Id == id)?.Letter ?? id;

    string Letters(ImmutableArray<string> ids)
    {
        string[] letters = [.. ids.Select(Letter)];
        return letters.Length > 8 ? $"{string.Join(", ", letters[..3])} … {letters[^1]}" : string.Join(", ", letters);
    }
}
