namespace WitnessMark.PrintRoom.Letters;

/// <summary>A letter in its line, tenths of the capital height.</summary>
/// <param name="Stands">The text it stands for; it alone decides the glyph.</param>
/// <param name="X">Its left edge from the start of the line.</param>
/// <param name="Found">False when the alphabet lacks it and a box is drawn.</param>
public readonly record struct Placed(Glyph Glyph, string Stands, double X, bool Found = true)
{
    public double End => X + Glyph.Width;
}
