using System.Globalization;
using WitnessMark.DrawingOffice.Survey.Solid;
using WitnessMark.FrontOffice.Typed;
using WitnessMark.Maths;

namespace WitnessMark.FrontOffice.MeasureSolid;

/// <summary>Kinds of features in space and rough directions as people write them.</summary>
public static class SolidWords
{
    internal static SolidKind Kind(string? word, string field, Place place) =>
        word is not null && Read(word) is { } kind ? kind : throw place.Refuse(field, word, "write corner, hole, face, edge, round or set-up");

    /// <summary>Null for a word that names none.</summary>
    public static SolidKind? Read(string word) => word.Trim().ToLowerInvariant().Replace(' ', '-') switch
    {
        "corner" or "point" => SolidKind.Point,
        "hole" => SolidKind.Hole,
        "face" or "plane" => SolidKind.Plane,
        "edge" => SolidKind.Edge,
        "round" or "tube" or "bar" or "cylinder" => SolidKind.Cylinder,
        "set-up" or "setup" => SolidKind.SetUp,
        _ => null,
    };

    public static string Word(SolidKind kind) => kind switch
    {
        SolidKind.Point => "corner",
        SolidKind.Plane => "face",
        SolidKind.Cylinder => "round",
        SolidKind.SetUp => "set-up",
        _ => kind.ToString().ToLowerInvariant(),
    };

    public static string One(SolidKind kind) => kind == SolidKind.Edge ? "an edge" : $"a {Word(kind)}";

    /// <summary>up, down, left, right, front, back; or three numbers: to the right, to the back, up.</summary>
    internal static Vec3 Way(string text, string field, Place place) => text.ToLowerInvariant() switch
    {
        "up" => new(0, 0, 1),
        "down" => new(0, 0, -1),
        "right" => new(1, 0, 0),
        "left" => new(-1, 0, 0),
        "back" => new(0, 1, 0),
        "front" => new(0, -1, 0),
        _ => Numbers(text) ?? throw place.Refuse(field, text, "write up, down, left, right, front or back, or three numbers such as 0 1 2 for how far right, back and up"),
    };

    static Vec3? Numbers(string text)
    {
        if (text.Split(' ', StringSplitOptions.RemoveEmptyEntries) is not [var a, var b, var c]) return null;
        var way = new Vec3(Number(a), Number(b), Number(c));
        return way.Length is > 1e-9 and < 1e9 ? way : null;
    }

    static double Number(string text) => double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var n) ? n : double.NaN;
}
