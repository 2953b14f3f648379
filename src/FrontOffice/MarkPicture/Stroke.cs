using System.Collections.Immutable;
using WitnessMark.Maths;

namespace WitnessMark.FrontOffice.MarkPicture;

/// <summary>What a line drawn on a picture is.</summary>
public enum StrokeKind
{
    /// <summary>Freehand, through all its places.</summary>
    Pen,

    /// <summary>From the first place to a head at the last.</summary>
    Arrow,

    /// <summary>About the first place, through the last.</summary>
    Circle,

    /// <summary>Words that begin at the first place.</summary>
    Words,
}

/// <summary>Each is dark and drawn with a light rim, so that it stands out on any picture.</summary>
public enum Ink { Red, Blue, Green, Black }

/// <summary>One line drawn on a picture.</summary>
/// <param name="Places">Parts of the picture's width and height, 0 to 1 from the left top.</param>
/// <param name="Weight">1 fine to 4 broad.</param>
/// <param name="Text">Of <see cref="StrokeKind.Words"/>; else empty.</param>
public sealed record Stroke(StrokeKind Kind, Ink Ink, int Weight, ImmutableArray<Vec2> Places, string Text = "")
{
    public const int Broadest = 4, LongestText = 200, MostPlaces = 2000;

    /// <summary>Most lines on one picture.</summary>
    public const int Most = 500;

    /// <summary>Why it cannot be drawn; null when it can.</summary>
    public Refusal? Wrong() =>
        (Places.IsDefaultOrEmpty || Places.Length > MostPlaces ? Refusal.Of("places of the stroke", Places.IsDefault ? null : $"{Places.Length}", $"give 1 to {MostPlaces}") : null)
        ?? (Places.Any(p => !(p.X is >= 0 and <= 1 && p.Y is >= 0 and <= 1)) ? Refusal.Of("places of the stroke", "beside the picture", "keep each from 0 to 1") : null)
        ?? (Weight is < 1 or > Broadest ? Refusal.Of("weight of the stroke", $"{Weight}", $"choose 1 to {Broadest}") : null)
        ?? (Text is null || Text.Length > LongestText ? Refusal.Of("words of the stroke", Text, $"at most {LongestText} characters fit on a picture") : null)
        ?? (Kind != StrokeKind.Pen && Kind != StrokeKind.Words && Places.Length != 2 ? Refusal.Of("places of the stroke", $"{Places.Length}", "an arrow or a circle has two") : null)
        ?? (Kind == StrokeKind.Words && string.IsNullOrWhiteSpace(Text) ? Refusal.Of("words of the stroke", null, "write what is to stand there") : null);

    /// <summary>A freehand line without the places that a finger made by lingering.</summary>
    public static Stroke Pen(Ink ink, int weight, IEnumerable<Vec2> places)
    {
        var kept = ImmutableArray.CreateBuilder<Vec2>();
        foreach (var place in places.Select(Held))
            if (kept.Count == 0 || kept[^1].DistanceTo(place) > Lingering) kept.Add(place);
        return new(StrokeKind.Pen, ink, weight, [.. kept.Take(MostPlaces)]);
    }

    /// <summary>The nearest place on the picture, to a ten-thousandth of its width: finer than any screen.</summary>
    public static Vec2 Held(Vec2 place) => new(Math.Round(Math.Clamp(place.X, 0, 1), 4), Math.Round(Math.Clamp(place.Y, 0, 1), 4));

    const double Lingering = 0.002;
}
