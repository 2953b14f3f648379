namespace WitnessMark.Maths;

/// <summary>
/// Why an input is refused, in one plain sentence that names where, the field, the value and what would be right.
/// </summary>
public sealed record Refusal(string Sentence)
{
    public static Refusal Of(string field, string? value, string wanted, int? line = null) =>
        new($"{(line is { } n ? $"line {n}, " : "")}{field}: {Quoted(value)}; {wanted}.");

    /// <summary>The same refusal, told with the line it stands on.</summary>
    public Refusal OnLine(int line) => new($"line {line}, {Sentence}");

    /// <summary>The same refusal, told with what it is part of.</summary>
    public Refusal In(string whole) => new($"{whole}, {Sentence}");

    static string Quoted(string? value) => value switch
    {
        null or "" => "nothing is given",
        // A text straight out of JSON brings its own.
        ['"', .. var inner, '"'] when inner.Length > 0 => Quoted(inner),
        { Length: > 60 } => $"\"{value[..57]}...\" is not accepted",
        _ => $"\"{value}\" is not accepted",
    };
}

/// <summary>Bad input. Carries the sentence that the person reads; nothing has been changed when it is thrown.</summary>
/// <param name="why">The fault behind the refusal, when there was one.</param>
public sealed class RefusedException(Refusal refusal, Exception? why = null) : Exception(refusal.Sentence, why)
{
    public Refusal Refusal { get; } = refusal;
}

/// <summary>What was read, or why it could not be.</summary>
public readonly record struct Parsed<T>
{
    readonly T _value;

    Parsed(T value, Refusal? refusal) => (_value, Refusal) = (value, refusal);

    public Refusal? Refusal { get; }

    public bool Ok => Refusal is null;

    /// <summary>The value; throws <see cref="RefusedException"/> when there is none.</summary>
    public T Value => Refusal is null ? _value : throw new RefusedException(Refusal);

    public static implicit operator Parsed<T>(T value) => new(value, null);

    public static implicit operator Parsed<T>(Refusal refusal) => new(default!, refusal);
}
