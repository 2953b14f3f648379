using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Photo.Cameras;

/// <summary>
/// One thing seen: the place <paramref name="Mm"/> of the sheet lies on the line through <paramref name="Px"/> square to
/// <paramref name="Normal"/>. A straight side of a square gives two, at plus and minus its points' own spread, where the errors of a fitted
/// line do not go together; a picked corner gives two, along x and along y.
/// </summary>
/// <param name="Outward">mm; which way the place moves when all squares come out a millimetre larger a side.</param>
/// <param name="Std">Along the normal, px.</param>
/// <param name="Mark">Which square or corner it belongs to.</param>
readonly record struct Sight(int Mark, Vec2 Mm, Vec2 Outward, Vec2 Px, Vec2 Normal, double Std);
