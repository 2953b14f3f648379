using WitnessMark.DrawingOffice.Intent.Patterns;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Tests.Intent.Patterns;

/// <summary>How much of what was meant was found, and how much of what was found was meant.</summary>
public sealed record Score(int Meant, int Recovered, int Told, int Right, int Values, int ValuesRecovered, int ValuesTold, int ValuesRight)
{
    public double Recall => Share(Recovered, Meant);
    public double Precision => Share(Right, Told);
    public double ValueRecall => Share(ValuesRecovered, Values);
    public double ValuePrecision => Share(ValuesRight, ValuesTold);

    static double Share(int part, int whole) => whole == 0 ? 1 : (double)part / whole;

    public static Score operator +(Score a, Score b) => new(a.Meant + b.Meant, a.Recovered + b.Recovered, a.Told + b.Told, a.Right + b.Right,
        a.Values + b.Values, a.ValuesRecovered + b.ValuesRecovered, a.ValuesTold + b.ValuesTold, a.ValuesRight + b.ValuesRight);

    public static Score Nothing { get; } = new(0, 0, 0, 0, 0, 0, 0, 0);
}

/// <summary>
/// Judges by implication both ways: what was meant is recovered when it holds on the found shape, and what was told is right
/// when it holds on the drawn one. Nothing that touches a worn feature is asked for, but what is told of one is judged.
/// </summary>
public static class PlateJudge
{
    /// <summary>mm. Cause: what is held holds to a ten-thousandth, and nothing comes so near by chance.</summary>
    const double Holds = 1e-3;

    public static Score Of(Plate plate, IntentPlan found, Action<string>? tell = null)
    {
        var shape = new Drawn(
            found.Meant.Where(m => m.Kind != FeatureKind.Edge).ToDictionary(m => m.Id, m => m.At),
            found.Meant.Where(m => m.Size is not null).ToDictionary(m => m.Id, m => m.Size!.Value));
        var score = Score.Nothing;
        foreach (var m in plate.Meanings.Where(m => !m.Touches.Any(plate.Worn.Contains)))
        {
            var recovered = Math.Abs(m.Of(shape)) < Holds;
            if (!recovered) tell?.Invoke($"missed: {m.What} {string.Join(',', m.Touches)} {m.Value} off {m.Of(shape):0.000}");
            score += m.Value is null ? Score.Nothing with { Meant = 1, Recovered = recovered ? 1 : 0 } : Score.Nothing with { Values = 1, ValuesRecovered = recovered ? 1 : 0 };
        }
        foreach (var f in found.Findings.Where(f => f.Standing is Standing.Accepted))
        {
            var (told, right) = Judged(f, plate.Meant);
            if (right < told) tell?.Invoke($"wrong: {f.Key} {right} of {told} chi {f.ChiSquare:0.0}/{f.Freedom} log {f.LogOdds:0.0}");
            score += f.Nominal is null ? Score.Nothing with { Told = told, Right = right } : Score.Nothing with { ValuesTold = told, ValuesRight = right };
        }
        return score;
    }

    /// <summary>Independent statements in a finding, and how many hold on the drawing.</summary>
    static (int Told, int Right) Judged(Finding f, Drawn drawn)
    {
        string[] ids = [.. f.Key.Split(':')[1].Split('@', '=')[0].Split(',')];
        switch (f.Kind)
        {
            case PatternKind.EqualSize:
                return Largest(ids.Select(i => drawn.Size[i]));
            case PatternKind.RoundSize:
                return (1, Near(drawn.Size[ids[0]], f.Nominal!.Value));
            case PatternKind.Parallel:
                return Largest(ids.Select(i => Math.IEEERemainder(drawn.Way(i).Angle - 0.1, Math.PI) * 150));
            case PatternKind.Square:
                return (1, Near(drawn.Way(ids[0]).Dot(drawn.Way(ids[1])) * 150, 0));
            case PatternKind.InLine or PatternKind.OnEdge:
                return Largest(ids.Select(i => Station(f, drawn, i, about: true)));
            case PatternKind.EquallySpaced:
                double[] at = [.. ids.Select(i => Station(f, drawn, i, about: false))];
                return (ids.Length - 2, Enumerable.Range(0, ids.Length - 2).Sum(i => Near(at[i] - 2 * at[i + 1] + at[i + 2], 0)));
            case PatternKind.Symmetric:
                double[] places = [.. ids.Select(i => Station(f, drawn, i, about: false))];
                return Largest(places.Chunk(2).Select(p => p[0] + p[1]));
            case PatternKind.PitchCircle or PatternKind.EqualSteps:
                return Circle(f, drawn, ids);
            case PatternKind.RoundDistance when f.About!.StartsWith("circle", StringComparison.Ordinal):
                return (1, Near(2 * drawn.At[ids[0]].DistanceTo(Middle(f.About["circle round ".Length..], drawn, ids)), f.Nominal!.Value));
            case PatternKind.RoundDistance:
                return (1, Near(Math.Abs(Station(f, drawn, ids[0], about: false) - Station(f, drawn, ids[1], about: false)), f.Nominal!.Value));
            default:
                return (1, 0);
        }
    }

    static (int, int) Circle(Finding f, Drawn drawn, string[] ids)
    {
        var middle = Middle(f.About!, drawn, ids);
        var (told, right) = Largest(ids.Select(i => drawn.At[i].DistanceTo(middle)));
        if (f.Kind == PatternKind.PitchCircle) return (told, right);
        var first = drawn.At[ids[0]] - middle;
        for (var steps = ids.Length; steps <= 2 * ids.Length; steps++)
        {
            var turns = ids.Select(i => Math.IEEERemainder((drawn.At[i] - middle).Angle - first.Angle, 2 * Math.PI / steps) * first.Length);
            if (turns.All(t => Math.Abs(t) < Holds)) return (2 * told, right + told);
        }
        return (2 * told, right);
    }

    static Vec2 Middle(string about, Drawn drawn, string[] ids) =>
        about == "their middle" ? ids.Aggregate(Vec2.Zero, (s, i) => s + drawn.At[i]) / ids.Length : drawn.At[about];

    /// <summary>Where a feature stands along the direction named, or square to it.</summary>
    static double Station(Finding f, Drawn drawn, string id, bool about)
    {
        var name = f.About!.Split(' ')[1];
        var along = name.Contains('-') ? (drawn.Place(name.Split('-')[1]) - drawn.Place(name.Split('-')[0])).Unit : drawn.Way(name);
        var way = f.About.StartsWith("along", StringComparison.Ordinal) ^ about ? along : along.Left;
        return way.Dot(drawn.Place(id));
    }

    static int Near(double a, double b) => Math.Abs(a - b) < Holds ? 1 : 0;

    /// <summary>All but one of the features say something; those that agree with most others are right.</summary>
    static (int, int) Largest(IEnumerable<double> values)
    {
        double[] all = [.. values];
        return (all.Length - 1, all.Max(v => all.Count(o => Math.Abs(o - v) < Holds)) - 1);
    }
}
