using WitnessMark.Maths;

namespace WitnessMark.Stores.Photographs;

/// <summary>Smaller copies of a picture: for a list, and for looking at.</summary>
public enum SmallSize
{
    /// <summary>For a list: 320 px on the longer side.</summary>
    List = 320,

    /// <summary>For looking at: 1600 px on the longer side.</summary>
    View = 1600,
}

/// <summary>Makes pixels of pictures where a native library may serve.</summary>
public interface IPictureMaker
{
    /// <summary>JPEGs of these sizes, upright and with nothing but pixels in them, in the order asked. None is larger than the picture.</summary>
    /// <exception cref="RefusedException">No pixels can be made of it.</exception>
    IReadOnlyList<byte[]> Smaller(ReadOnlyMemory<byte> picture, IReadOnlyList<SmallSize> sizes);

    /// <summary>A JPEG of the picture, upright and with nothing but pixels in it, and these marks on it.</summary>
    /// <param name="marks">Drawn in this order.</param>
    /// <param name="longest">Of the longer side, px; a smaller picture keeps its size.</param>
    /// <exception cref="RefusedException">No pixels can be made of it.</exception>
    byte[] Marked(ReadOnlyMemory<byte> picture, IReadOnlyList<PictureMark> marks, int longest);
}

/// <summary>One line drawn on a picture.</summary>
/// <param name="Path">SVG path data; the picture's width counts 1000 units, y down.</param>
/// <param name="Colour">As in <c>#a0281a</c>.</param>
/// <param name="Width">Units.</param>
public sealed record PictureMark(string Path, string Colour, double Width);
