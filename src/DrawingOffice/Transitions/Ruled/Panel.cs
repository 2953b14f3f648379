namespace WitnessMark.DrawingOffice.Transitions;

/// <summary>
/// A stretch of the skin between two straight elements: flat, or rolled along elements that turn about a corner or lie on two arcs.
/// Places are on the two rims and never run back.
/// </summary>
public readonly record struct Panel(bool Flat, double FirstFrom, double FirstTo, double SecondFrom, double SecondTo)
{
    public bool FirstMoves => FirstTo > FirstFrom;

    public bool SecondMoves => SecondTo > SecondFrom;

    public Panel On(double firstBy, double secondBy) =>
        new(Flat, FirstFrom + firstBy, FirstTo + firstBy, SecondFrom + secondBy, SecondTo + secondBy);
}

/// <summary>An element by its places on both rims.</summary>
public readonly record struct Element(double First, double Second);
