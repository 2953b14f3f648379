using WitnessMark.Maths;

namespace WitnessMark.FrontOffice.MarkPicture;

/// <summary>What is drawn on a picture, for a person who does not see it.</summary>
public static class StrokeWords
{
    public static string Of(Stroke stroke) => stroke.Kind switch
    {
        StrokeKind.Arrow => $"{Coloured(stroke)} arrow from {Where(stroke.Places[0])} to {Where(stroke.Places[^1])}",
        StrokeKind.Circle => $"{Coloured(stroke)} circle about {Where(stroke.Places[0])}",
        StrokeKind.Words => $"The words \"{stroke.Text}\" in {stroke.Ink.ToString().ToLowerInvariant()} at {Where(stroke.Places[0])}",
        _ when stroke.Places.Length == 1 => $"{Coloured(stroke)} dot at {Where(stroke.Places[0])}",
        _ => $"{Coloured(stroke)} line from {Where(stroke.Places[0])} to {Where(stroke.Places[^1])}",
    };

    /// <summary>One of nine fields of the picture.</summary>
    public static string Where(Vec2 place)
    {
        var (across, down) = (Third(place.X), Third(place.Y));
        return (across, down) switch
        {
            (1, 1) => "the middle",
            (1, _) => down == 0 ? "the top" : "the bottom",
            (_, 1) => across == 0 ? "the left" : "the right",
            _ => $"the {(down == 0 ? "top" : "bottom")} {(across == 0 ? "left" : "right")}",
        };
    }

    static string Coloured(Stroke stroke) => stroke.Ink.ToString();

    static int Third(double share) => share < 1.0 / 3 ? 0 : share > 2.0 / 3 ? 2 : 1;
}
