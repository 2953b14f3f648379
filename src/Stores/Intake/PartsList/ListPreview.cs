using System.Collections.Immutable;
using WitnessMark.Maths;

namespace WitnessMark.Stores.Intake;

/// <summary>What the person says about a typed list; what is left open is guessed from the file.</summary>
/// <param name="Map">Null: proposed from the head row.</param>
/// <param name="InSystem">The system of rows that name none.</param>
/// <param name="Driver">The side the driver sits on, where near side and off side are written; None when not said.</param>
public sealed record ListSettings(char? Separator = null, ColumnMap? Map = null, string InSystem = "", Hand Driver = Hand.None);

/// <summary>A row of a typed list.</summary>
/// <param name="Quantity">Null when the row gives none.</param>
public sealed record ListedPart(
    int Line, string System, string Assembly, string Name, string Reference, Hand Hand, int? Quantity, string Condition, RouteDecision? Route)
{
    /// <summary>As a new part; a quantity that is not given is 1.</summary>
    public Part As(Guid id, Guid system, Guid? assembly) => new(id, system, Name, Reference, Hand, Quantity ?? 1, Condition, Route, assembly);

    internal Refusal? Wrong =>
        Check.Of(new VehicleSystem(default, default, System, 0))
        ?? (Assembly == "" ? null : Check.Of(new Assembly(default, default, Assembly, 0)))
        ?? Check.Of(As(default, default, null));
}

/// <summary>What is done with a row that seems to be there already.</summary>
public enum DuplicateAnswer { Skip, Update, Add }

/// <summary>A row that seems to be there already.</summary>
/// <param name="PartId">The part of the vehicle that it may be; null when it is an earlier row of the list.</param>
/// <param name="EarlierLine">The earlier row; null when it is a part of the vehicle. Such a row is skipped or added.</param>
/// <param name="Why">In words.</param>
/// <param name="Proposed">Until the person says otherwise.</param>
public sealed record ListDuplicate(int Line, Guid? PartId, int? EarlierLine, string Why, DuplicateAnswer Proposed);

/// <summary>A typed list as it was understood. Nothing is kept yet.</summary>
/// <param name="Encoding">What the bytes were taken for.</param>
/// <param name="Head">The first row's cells, or column numbers where it names nothing.</param>
/// <param name="First">The first rows as they stand, to see what a column holds.</param>
/// <param name="Missing">What must be said before rows can be read; null when they were.</param>
/// <param name="Parts">The rows that can be taken, duplicates included.</param>
/// <param name="Refused">The others, by line and column.</param>
public sealed record ListPreview(
    string Encoding, char Separator, ColumnMap Map, ImmutableArray<string> Head, ImmutableArray<ImmutableArray<string>> First, Refusal? Missing,
    ImmutableArray<ListedPart> Parts, ImmutableArray<Refusal> Refused, ImmutableArray<ListDuplicate> Duplicates)
{
    /// <summary>Rows above the head row, which are passed over.</summary>
    public int Titles { get; init; }

    /// <summary>One sentence for each thing to know before the list is taken.</summary>
    public IEnumerable<string> Words
    {
        get
        {
            yield return $"Read as {Encoding}, cells parted by {Separators.Words(Separator)}: {Count(Parts.Length, "row")} can be taken, {Refused.Length} refused, {Duplicates.Length} {(Duplicates.Length == 1 ? "seems" : "seem")} to be there already.";
            if (Titles > 0) yield return $"{Count(Titles, "row")} above the head row passed over.";
            if (Missing is { } missing) yield return missing.Sentence;
            if (Parts.Count(p => p.Quantity is null) is > 0 and var bare) yield return $"{Count(bare, "row")} without a quantity: one of each is taken.";
        }
    }

    static string Count(int n, string what) => $"{n} {what}{(n == 1 ? "" : "s")}";
}
