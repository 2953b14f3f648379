namespace WitnessMark.DrawingOffice.Survey.Network.Wear;

/// <summary>How far a row may be from what was made, beyond the error of its instrument. The default is a sound row.</summary>
/// <param name="Sign">+1: wear makes it read larger; −1: smaller; 0: no side is known, or there is no wear.</param>
/// <param name="Scale">Mean wear along <paramref name="Sign"/>, mm; 0 where there is no side.</param>
/// <param name="Spread">Standard deviation of what moves it either way, in the row's unit; already in the row's σ.</param>
readonly record struct RowWear(int Sign, double Scale, double Spread, MadeBound Says)
{
    public bool IsOneSided => Sign != 0;
}
