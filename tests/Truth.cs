namespace WitnessMark.Tests;

/// <summary>Where a checked value comes from, strongest first. A figure quoted in the docs needs one of the first three.</summary>
public enum Grade { Certified, Published, SecondImplementation, Property, CommonPractice, FromMemory }

/// <summary>The outside authority a test leans on, written beside it and carried as the test traits <c>truth</c> and <c>source</c>.</summary>
[AttributeUsage(AttributeTargets.Method | AttributeTargets.Class, AllowMultiple = true)]
public sealed class TruthAttribute(Grade grade, string source) : Attribute, Xunit.v3.ITraitAttribute
{
    public Grade Grade { get; } = grade;

    public string Source { get; } = source;

    public IReadOnlyCollection<KeyValuePair<string, string>> GetTraits() =>
        [new("truth", Spelled(Grade)), new("source", Source)];

    static string Spelled(Grade grade) => grade switch
    {
        Grade.SecondImplementation => "second implementation",
        Grade.CommonPractice => "common practice",
        Grade.FromMemory => "from memory",
        _ => grade.ToString().ToLowerInvariant(),
    };
}
