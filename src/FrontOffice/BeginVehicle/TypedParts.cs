using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using WitnessMark.Stores;

namespace WitnessMark.FrontOffice.BeginVehicle;

/// <summary>A part as typed.</summary>
/// <param name="System">Null when none was named above it.</param>
public sealed record TypedPart(int Line, string? System, string Name, Hand Hand, int Quantity);

/// <summary>
/// First parts as a person jots them down: one to a line. A line that ends with a colon, or is the name of a system, is a heading. <c>LH</c> or
/// <c>RH</c> and a number such as <c>x 4</c> may stand behind the name; <c>LH + RH</c> means one of each.
/// </summary>
public static partial class TypedParts
{
    public static ImmutableArray<TypedPart> Read(string text, ImmutableArray<string> systems)
    {
        var parts = ImmutableArray.CreateBuilder<TypedPart>();
        string? system = null;
        var lines = text.ReplaceLineEndings("\n").Split('\n');
        for (var i = 0; i < lines.Length; i++)
        {
            var line = lines[i].Trim().TrimStart('-', '*', '•').Trim();
            if (line.Length == 0) continue;
            if (line.EndsWith(':') || systems.Any(s => string.Equals(s, line, StringComparison.OrdinalIgnoreCase)))
            {
                system = line.TrimEnd(':').Trim();
                if (system.Length == 0) system = null;
                continue;
            }
            var count = Count().Match(line);
            var quantity = count.Success && int.TryParse(count.Groups["n"].ValueSpan, NumberStyles.None, CultureInfo.InvariantCulture, out var n) ? n : 1;
            if (count.Success) line = line[..count.Index].Trim();
            var side = Side().Match(line);
            var name = (side.Success ? line[..side.Index] : line).Trim().TrimEnd(',').Trim();
            if (side.Success && side.Groups["both"].Success)
            {
                parts.Add(new(i + 1, system, name, Hand.LH, quantity));
                parts.Add(new(i + 1, system, name, Hand.RH, quantity));
            }
            else parts.Add(new(i + 1, system, name, side.Success ? Enum.Parse<Hand>(side.Groups["side"].Value.ToUpperInvariant()) : Hand.None, quantity));
        }
        return parts.ToImmutable();
    }

    [GeneratedRegex(@"[\s,]+[x×]\s*(?<n>\d{1,9})$", RegexOptions.IgnoreCase)]
    private static partial Regex Count();

    [GeneratedRegex(@"[\s,]+((?<both>LH\s*(\+|and|&|/|,)\s*RH)|(?<side>LH|RH))$", RegexOptions.IgnoreCase)]
    private static partial Regex Side();
}
