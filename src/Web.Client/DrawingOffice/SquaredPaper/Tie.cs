namespace WitnessMark.Web.Client.DrawingOffice.SquaredPaper;

/// <summary>Why a reading is drawn on the paper.</summary>
public enum TieKind { Lit, Doubtful, Suggested }

/// <summary>A reading drawn between the features it ties.</summary>
public sealed record Tie(string From, string? To, TieKind Kind, string Words);
