using System.Collections.Immutable;
using System.Text.RegularExpressions;
using WitnessMark.DrawingOffice.Intent;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.FrontOffice.Typed;
using WitnessMark.Maths;
using WitnessMark.Trade;

namespace WitnessMark.FrontOffice.MakeToSize;

/// <summary>One measured size as typed; cells that are not given are empty.</summary>
public sealed record TypedSize(int Line, string Item, string What, string Facet, string Value, string Instrument, string Condition, string Coat = "", string Note = "");

/// <summary>Makes measurements of typed ones.</summary>
static partial class MeasuredWords
{
    const string PitchGauge = "pitch gauge";

    /// <summary>Threads that a leaf of a pitch gauge usually lies on.</summary>
    const int ThreadsHeld = 10;

    public static readonly ImmutableArray<(string Words, Subject Subject)> Subjects =
        [.. Enum.GetValues<Subject>().Select(s => (Regex.Replace(s.ToString(), "(?<=[a-z])(?=[A-Z])", " ").ToLowerInvariant(), s))];

    public static readonly ImmutableArray<(string Words, Facet Facet)> Facets = [.. Enum.GetValues<Facet>().Select(f => (f.ToString().ToLowerInvariant(), f))];

    static readonly ImmutableArray<(string Words, Condition Condition)> Conditions =
        [("", Condition.Unknown), ("new", Condition.New), ("light", Condition.Light), ("worn", Condition.Worn), ("badly worn", Condition.BadlyWorn)];

    static readonly ImmutableArray<Coat> Coats = [Coat.Plated, Coat.Galvanised, Coat.Painted];

    public static Subject SubjectOf(TypedSize typed, Place place) => OneOf(Subjects, typed.What, "what", place);

    public static Measured Read(TypedSize typed, SheetSpelling spelling, IReadOnlyDictionary<string, Instrument> instruments)
    {
        var place = typed.Line > 0 ? new Place(typed.Line) : Place.None;
        var subject = SubjectOf(typed, place);
        var facet = OneOf(Facets, typed.Facet.Length == 0 ? "size" : typed.Facet, "facet", place);
        var isAngle = facet == Facet.Flank || subject == Subject.Angle;
        var sigmas = new SigmaWords(spelling, instruments, place, isAngle, typed.What);
        var measured = facet == Facet.Pitch ? Pitch(typed, spelling, sigmas, place) : new Measured(facet, Size(typed, spelling, sigmas, isAngle, place));
        return measured with { Condition = OneOf(Conditions, typed.Condition, "condition", place), Coat = CoatOf(typed.Coat, place) };
    }

    static Uncertain Size(TypedSize typed, SheetSpelling spelling, SigmaWords sigmas, bool isAngle, Place place)
    {
        var (mean, half, repeats) = isAngle
            ? spelling.Angle(typed.Value, "value", place) is var a ? (a.Radians, a.PlusMinus, a.Repeats) : default
            : spelling.Length(typed.Value, "value", place) is var l ? (l.Mm, l.PlusMinus, l.Repeats) : default;
        if (!(mean > 0)) throw place.Refuse("value", typed.Value, "a size is more than 0");
        return new Uncertain(mean, half is { } h ? sigmas.Stated(h, "value") : sigmas.Of(typed.Instrument, repeats.AsSpan()));
    }

    /// <summary>By the leaf of a gauge, or by a length over counted threads with the ± of its instrument.</summary>
    static Measured Pitch(TypedSize typed, SheetSpelling spelling, SigmaWords sigmas, Place place)
    {
        var read = Pitches.Read(typed.Value, spelling.Spelling, "value");
        if (read.Refusal is { } refusal) throw new RefusedException(typed.Line > 0 ? refusal.OnLine(typed.Line) : refusal);
        var pitch = read.Value.Mm;
        if (read.Value.PlusMinus is { } half) return new Measured(Facet.Pitch, new Uncertain(pitch, sigmas.Stated(half, "value")));
        if (typed.Instrument.Equals(PitchGauge, StringComparison.OrdinalIgnoreCase)) return Measured.PitchByGauge(pitch, ThreadsHeld * pitch);
        if (Counted().Match(typed.Value) is { Success: true } counted)
        {
            var threads = int.Parse(counted.Groups["n"].Value, System.Globalization.CultureInfo.InvariantCulture);
            return new Measured(Facet.Pitch, new Uncertain(pitch, sigmas.Of(typed.Instrument, []) / threads));
        }
        if (sigmas.Alone(typed.Instrument, "instrument") is { } stated) return new Measured(Facet.Pitch, new Uncertain(pitch, stated));
        throw place.Refuse("instrument", typed.Instrument, $"write {PitchGauge}, a ±, or count: 10 threads in 12.5 mm");
    }

    static Coat? CoatOf(string word, Place place) => word.Length == 0 ? null
        : Coats.FirstOrDefault(c => c.Name == word.ToLowerInvariant())
            ?? throw place.Refuse("coat", word, $"write {string.Join(", ", Coats.Select(c => c.Name))} or leave it empty");

    static T OneOf<T>(ImmutableArray<(string Words, T Value)> known, string word, string field, Place place)
    {
        foreach (var (words, value) in known)
            if (words.Equals(word.Trim(), StringComparison.OrdinalIgnoreCase)) return value;
        throw place.Refuse(field, word, $"write one of {string.Join(", ", known.Select(k => k.Words).Where(w => w.Length > 0))}");
    }

    [GeneratedRegex(@"^\s*(?<n>[1-9][0-9]{0,2})\s*threads?\s+(in|over)\s", RegexOptions.IgnoreCase)]
    private static partial Regex Counted();
}
