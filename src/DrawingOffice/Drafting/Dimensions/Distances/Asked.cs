namespace WitnessMark.DrawingOffice.Drafting.Dimensions.Distances;

/// <summary>A linear dimension that is to be drawn.</summary>
sealed record Asked(Station A, Station B, bool Auxiliary, bool OverAll);
