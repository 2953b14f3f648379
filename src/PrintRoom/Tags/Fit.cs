using System.Collections.Immutable;
using WitnessMark.PrintRoom.Letters;

namespace WitnessMark.PrintRoom.Tags;

/// <summary>Text made to fit a width.</summary>
public static class Fit
{
    const string CutOff = "...";

    /// <summary>Lines of whole words; a word longer than a line is broken. What does not fit is cut off with three points.</summary>
    /// <param name="height">Capital height, mm.</param>
    /// <param name="width">mm.</param>
    public static ImmutableArray<string> Lines(string text, double height, double width, int most = int.MaxValue)
    {
        var lines = new List<string>();
        foreach (var word in text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries).SelectMany(w => Broken(w, height, width)))
        {
            var longer = lines.Count > 0 ? $"{lines[^1]} {word}" : word;
            if (lines.Count > 0 && Fits(longer, height, width)) lines[^1] = longer;
            else lines.Add(word);
        }
        if (lines.Count <= most || most < 1) return [.. lines.Take(most)];
        return [.. lines.Take(most - 1), Shortened(lines[most - 1], height, width)];
    }

    /// <summary>The largest of the heights at which the text stands in one line; null when none serves.</summary>
    public static double? Largest(string text, double width, params ReadOnlySpan<double> heights)
    {
        double? best = null;
        foreach (var height in heights)
            if (height > (best ?? 0) && Fits(text, height, width)) best = height;
        return best;
    }

    static string Shortened(string line, double height, double width)
    {
        var kept = line.Length;
        while (kept > 0 && !Fits(line[..kept].TrimEnd() + CutOff, height, width)) kept--;
        return line[..kept].TrimEnd() + CutOff;
    }

    static IEnumerable<string> Broken(string word, double height, double width)
    {
        while (word.Length > 1 && !Fits(word, height, width))
        {
            var kept = word.Length - 1;
            while (kept > 1 && !Fits(word[..kept], height, width)) kept--;
            if (char.IsHighSurrogate(word[kept - 1]) && kept < word.Length) kept++;
            yield return word[..kept];
            word = word[kept..];
        }
        if (word.Length > 0) yield return word;
    }

    static bool Fits(string text, double height, double width) => Lettering.Width(text, height) + Lettering.Pen * height <= width;
}
