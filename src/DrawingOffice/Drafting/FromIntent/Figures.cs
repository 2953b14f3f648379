using WitnessMark.DrawingOffice.Intent.Patterns;
using WitnessMark.DrawingOffice.Intent.Tables;

namespace WitnessMark.DrawingOffice.Drafting.FromIntent;

/// <summary>Round figures of a meant part, written in the person's unit.</summary>
sealed class Figures(IntentPlan intent, Writing writing)
{
    /// <summary>mm. Cause: what was found holds to far less on the meant shape, while two listed values lie hundredths apart.</summary>
    const double Exact = 2e-4;

    bool Inch => intent.Origins is [{ Name: "inch" }, ..];

    /// <summary>The made-to size of a feature as it is called for; null where it is as measured.</summary>
    public string? Size(string id) =>
        intent.Held.FirstOrDefault(f => f.Kind == PatternKind.RoundSize && f.Features.Contains(id))?.Nominal is { } n ? Written(n.Name) : null;

    /// <summary>A distance that is a listed one or follows from listed ones.</summary>
    public string? Between(Span span) => intent.Held.Any(f => f.Kind == PatternKind.RoundDistance) ? Length(span.Value) : null;

    /// <param name="mm">On the meant shape.</param>
    public string? Length(double mm)
    {
        var near = Inch ? Ladder.InchFractions(Math.Max(0.1, mm - 0.2), mm + 0.2) : Ladder.MetricTenths(Math.Max(0.1, mm - 0.1), mm + 0.1);
        return near.Where(c => Math.Abs(c.Size - mm) < Exact).Select(c => Written(c.Name)).FirstOrDefault();
    }

    /// <summary>The listed value where there is one, else as measured.</summary>
    public string LengthOr(double mm) => Length(mm) ?? writing.Length(mm, null);

    /// <summary>The unit is left off where the title block says it.</summary>
    string Written(string name) => name.EndsWith($" {writing.Units}", StringComparison.Ordinal) ? name[..^(writing.Units.Length + 1)] : name;
}
