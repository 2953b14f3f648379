using System.Text;
using WitnessMark.Maths;

namespace WitnessMark.Stores;

/// <summary>What makes a row fit to be kept: null when it is, else the sentence that says what is wrong.</summary>
public static class Check
{
    /// <summary>Longest free text kept, characters.</summary>
    public const int LongestText = 2000;

    /// <summary>Largest folded part kept, bytes as UTF-8; a face with four holes takes about 500.</summary>
    public const int LargestFolded = 200_000;

    public static Refusal? Of(Vehicle v) =>
        Named("vehicle name", v.Name) ?? Short("notes", v.Notes) ?? Short("maker", v.Maker) ?? Short("model", v.Model)
        ?? (v.Year is < 1800 or > 2100 ? Refusal.Of("year", $"{v.Year}", "give the year it was built, 1800 to 2100, or leave it out") : null);

    public static Refusal? Of(VehicleSystem s) => Named("system name", s.Name);

    public static Refusal? Of(Assembly a) => Named("assembly name", a.Name);

    public static Refusal? Of(Part p) =>
        Named("part name", p.Name) ?? Short("reference", p.Reference) ?? Short("condition", p.Condition)
        ?? (p.Quantity < 1 ? Refusal.Of("quantity", $"{p.Quantity}", "give a whole number from 1 up") : null)
        ?? (p.Route is { } r ? Named("reason for the route", r.Reason) ?? Known("route", r.Route) : null)
        ?? Known("hand", p.Hand);

    public static Refusal? Of(PartSample s) =>
        Named("sample title", s.Title) ?? Known("origin", s.Origin) ?? Listed("wanted readings", s.Wanted.IsDefault)
        ?? (s.Origin == SampleOrigin.Borrowed && s.Loan is null ? Refusal.Of("loan", null, "a borrowed sample needs its lender and the date it goes back") : null)
        ?? (s.Origin != SampleOrigin.Borrowed && s.Loan is not null ? Refusal.Of("loan", s.Loan.Lender, "only a borrowed sample has a lender") : null)
        ?? (s.Loan is { } l ? Of(l) : null)
        ?? s.Wanted.Select(w => Named("wanted reading's kind", w.Kind) ?? Named("wanted reading's feature", w.From)).FirstOrDefault(r => r is not null);

    public static Refusal? Of(SampleSketch s)
    {
        if (Listed("sketched features", s.Features.IsDefault) is { } none) return none;
        var seen = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        foreach (var f in s.Features)
        {
            if ((Named("feature id", f.Id) ?? Named("feature kind", f.Kind)) is { } missing) return missing;
            if (!seen.Add(f.Id)) return Refusal.Of("feature id", f.Id, "each feature of a sample needs an id of its own");
            if (new[] { f.X, f.Y, f.Turn, f.Size, f.Length }.Any(n => n is { } x && !double.IsFinite(x)))
                return Refusal.Of($"sketch of feature {f.Id}", "not a number", "give finite numbers or leave them out");
            if (f.Condition is { } condition && Named($"condition of feature {f.Id}", condition) is { } unnamed) return unnamed;
            if (f.Wear is { } wear && !(wear is > 0 and <= 1000)) return Refusal.Of($"wear of feature {f.Id}", $"{wear}", "give mm above 0, at most 1000, or leave it out");
            if (f.Size is <= 0 || f.Length is <= 0)
                return Refusal.Of($"sketched size of feature {f.Id}", $"{(f.Size is <= 0 ? f.Size : f.Length)}", "give a size above 0 mm or leave it out");
        }
        return null;
    }

    public static Refusal? Of(FoldedPart f) => f.Text switch
    {
        null => null,
        var text when string.IsNullOrWhiteSpace(text) => Refusal.Of("folded part", null, "type its faces and bends, or send none for a flat part"),
        var text => TooLong("folded part", text),
    };

    /// <summary>A typed text that is kept whole takes at most <see cref="LargestFolded"/> bytes.</summary>
    public static Refusal? TooLong(string field, string text) => Encoding.UTF8.GetByteCount(text) is > LargestFolded and var bytes
        ? Refusal.Of(field, $"{bytes / 1000} kB", $"at most {LargestFolded / 1000} kB are kept") : null;

    public static Refusal? Of(OwnedInstrument i) =>
        Named("instrument name", i.Name)
        ?? NotNegative("resolution", i.Resolution) ?? NotNegative("stated error", i.StatedError) ?? NotNegative("repeatability", i.Repeatability)
        ?? (i.Resolution + i.StatedError + i.Repeatability > 0 ? null
            : Refusal.Of($"instrument {i.Name}", "0", "at least one of resolution, stated error and repeatability must be above 0"));

    public static Refusal? Of(ReadingEntry r) =>
        (r.Id == Guid.Empty ? Refusal.Of("reading id", null, "it is made where the reading is taken") : null)
        ?? Named("kind", r.Kind) ?? Named("from", r.From)
        ?? Short("to", r.To) ?? Short("value", r.Value) ?? Short("±", r.PlusMinus) ?? Short("instrument", r.Instrument)
        ?? Short("note", r.Note) ?? Short("device", r.Device);

    public static Refusal? Of(Withdrawal w) =>
        (w.Id == Guid.Empty ? Refusal.Of("withdrawal id", null, "it is made where the reading is taken back") : null)
        ?? Short("reason", w.Reason) ?? Short("device", w.Device);

    static Refusal? Of(Loan l) =>
        Named("lender", l.Lender)
        ?? (l.Due < l.Lent ? Refusal.Of("due date", $"{l.Due:yyyy-MM-dd}", $"it must not be before the day it was lent, {l.Lent:yyyy-MM-dd}") : null);

    internal static Refusal? Named(string field, string? text) =>
        string.IsNullOrWhiteSpace(text) ? Refusal.Of(field, null, "a few words are needed") : Short(field, text);

    internal static Refusal? Short(string field, string? text) =>
        text is null ? Refusal.Of(field, null, "it may be empty, but must be there")
        : text.Length > LongestText ? Refusal.Of(field, text, $"at most {LongestText} characters are kept")
        : null;

    internal static Refusal? Known<T>(string field, T value) where T : struct, Enum =>
        Enum.IsDefined(value) ? null : Refusal.Of(field, $"{value}", $"give one of {string.Join(", ", Enum.GetNames<T>())}");

    internal static Refusal? Listed(string field, bool lacking) => lacking ? Refusal.Of(field, null, "send a list; it may be empty") : null;

    internal static Refusal? NotNegative(string field, double value) =>
        double.IsFinite(value) && value >= 0 ? null : Refusal.Of(field, $"{value}", "give a number from 0 up");
}
