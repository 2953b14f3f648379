using System.Buffers.Binary;
using System.Globalization;
using System.Text;
using WitnessMark.Maths;

namespace WitnessMark.PrintRoom.Solids;

/// <summary>
/// A mesh as STL, mm (the format itself names no unit). Coordinates are single precision: worst relative error 6e-8.
/// </summary>
public static class Stl
{
    const int Head = 80;
    const int PerTriangle = 50;

    /// <exception cref="RefusedException">A corner that does not exist or a coordinate that is no number.</exception>
    public static byte[] Binary(Mesh mesh, string name)
    {
        Check(mesh);
        var file = new byte[Head + 4 + PerTriangle * mesh.Triangles.Length];
        // A binary file must not begin with "solid", by which readers know the other kind.
        Encoding.ASCII.GetBytes(Cut("STL mm " + Plain(name), Head), file);
        BinaryPrimitives.WriteUInt32LittleEndian(file.AsSpan(Head), (uint)mesh.Triangles.Length);
        var at = Head + 4;
        foreach (var triangle in mesh.Triangles)
        {
            var (a, b, c) = mesh.Corners(triangle);
            foreach (var value in new[] { mesh.Normal(triangle), a, b, c }.SelectMany(v => new[] { v.X, v.Y, v.Z }))
            {
                BinaryPrimitives.WriteSingleLittleEndian(file.AsSpan(at), (float)value);
                at += 4;
            }
            at += 2;
        }
        return file;
    }

    /// <exception cref="RefusedException">A corner that does not exist or a coordinate that is no number.</exception>
    public static string Ascii(Mesh mesh, string name)
    {
        Check(mesh);
        var text = new StringBuilder($"solid {Plain(name)}\n");
        foreach (var triangle in mesh.Triangles)
        {
            var (a, b, c) = mesh.Corners(triangle);
            text.Append($"facet normal {Written(mesh.Normal(triangle))}\nouter loop\n");
            foreach (var corner in new[] { a, b, c }) text.Append($"vertex {Written(corner)}\n");
            text.Append("endloop\nendfacet\n");
        }
        return text.Append($"endsolid {Plain(name)}\n").ToString();
    }

    static void Check(Mesh mesh)
    {
        for (var i = 0; i < mesh.Points.Length; i++)
            if (!double.IsFinite(mesh.Points[i].X + mesh.Points[i].Y + mesh.Points[i].Z))
                throw new RefusedException(Refusal.Of($"corner {i + 1}", Written(mesh.Points[i]), "its coordinates must be numbers, in mm"));
        for (var i = 0; i < mesh.Triangles.Length; i++)
        {
            var (a, b, c) = mesh.Triangles[i];
            if (Math.Min(a, Math.Min(b, c)) < 0 || Math.Max(a, Math.Max(b, c)) >= mesh.Points.Length)
                throw new RefusedException(Refusal.Of($"triangle {i + 1}", $"{a} {b} {c}", $"its corners must be from 0 to {mesh.Points.Length - 1}"));
        }
    }

    static string Written(Vec3 v) => string.Join(' ', new[] { v.X, v.Y, v.Z }.Select(n => ((float)n).ToString("0.#######e+00", CultureInfo.InvariantCulture)));

    static string Plain(string name) => string.Concat(name.Select(c => c is > ' ' and <= '~' ? c : '_'));

    static string Cut(string text, int most) => text.Length <= most ? text : text[..most];
}
