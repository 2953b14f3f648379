namespace WitnessMark.Trade;

/// <summary>A size that the trade makes things to.</summary>
/// <param name="Name">As a person would ask for it: <c>14 SWG</c>, <c>No. 43 drill</c>, <c>5/16 in</c>.</param>
/// <param name="Series">The list it belongs to: <c>SWG</c>, <c>number drill</c>, <c>inch fraction</c>.</param>
/// <param name="Mm">Nominal diameter, thickness or length, mm.</param>
public sealed record NominalSize(string Name, string Series, double Mm, Source Source)
{
    public FigureGrade Grade => Source.Grade;
}
