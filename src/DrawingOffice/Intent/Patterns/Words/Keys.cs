using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Intent.Patterns.Hypotheses;

namespace WitnessMark.DrawingOffice.Intent.Patterns.Words;

/// <summary>How a hypothesis is spelt: <c>kind:feature,feature@about=value</c>, without spaces so that it can be typed on a command line.</summary>
static class Keys
{
    static readonly ImmutableArray<(PatternKind Kind, string Word)> Kinds =
    [
        (PatternKind.EqualSize, "equal"), (PatternKind.RoundSize, "size"), (PatternKind.Parallel, "parallel"), (PatternKind.Square, "square"),
        (PatternKind.SetAngle, "angle"), (PatternKind.InLine, "line"), (PatternKind.OnEdge, "on"), (PatternKind.EquallySpaced, "spaced"),
        (PatternKind.PitchCircle, "circle"), (PatternKind.EqualSteps, "steps"), (PatternKind.Symmetric, "symmetric"), (PatternKind.Tangent, "tangent"),
        (PatternKind.Concentric, "concentric"), (PatternKind.RoundDistance, "distance"),
    ];

    public static IEnumerable<string> Words => Kinds.Select(k => k.Word);

    public static PatternKind? KindOf(string word) => Kinds.Where(k => k.Word == word).Select(k => (PatternKind?)k.Kind).FirstOrDefault();

    public static string Of(PatternKind kind, IEnumerable<string> features, string? about, Nominal? nominal) =>
        $"{Kinds.First(k => k.Kind == kind).Word}:{string.Join(',', features)}"
        + (about is null ? "" : $"@{Joined(about)}") + (nominal is null ? "" : $"={Value(nominal)}");

    public static string Of(Hypothesis h, Shape shape) => Of(h.Kind, h.Features.Select(shape.Id), h.About, h.Nominal);

    /// <summary><c>1 1/2 in</c> becomes <c>1-1/2in</c>.</summary>
    public static string Value(Nominal nominal) => ValueOf(nominal.Name);

    public static string ValueOf(string name)
    {
        var words = name.Split(' ');
        return words.Length > 1 ? string.Join('-', words[..^1]) + words[^1] : name;
    }

    static string Joined(string about) => about.Replace(' ', '.');
}
