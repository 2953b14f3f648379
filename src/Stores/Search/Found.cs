using System.Collections.Immutable;

namespace WitnessMark.Stores;

/// <summary>Which text of a part a word was found in, the weightiest first.</summary>
public enum FoundIn { Name, Reference, Hand, Assembly, System, Condition, Other }

/// <summary>How near a written word comes to the asked one, nearest first.</summary>
public enum Likeness { Same, Number, Beginning, Within, OneSlip, TwoSlips }

/// <summary>A part with the words around it that it may be found by.</summary>
/// <param name="Other">Any further text: tags, bins, shelves. Empty where there is none.</param>
public sealed record PartWords(Part Part, string System, string Assembly = "", string Other = "")
{
    /// <param name="other">Further text by part: tags, bins, shelves.</param>
    public static IEnumerable<PartWords> Of(VehicleTree tree, IReadOnlyDictionary<Guid, string>? other = null)
    {
        var systems = tree.Systems.ToDictionary(s => s.Row.Id, s => s.Row.Name);
        var assemblies = tree.Assemblies.ToDictionary(a => a.Row.Id, a => a.Row.Name);
        return tree.Parts.Select(p => new PartWords(p.Row, systems.GetValueOrDefault(p.Row.SystemId, ""),
            p.Row.AssemblyId is { } assembly ? assemblies.GetValueOrDefault(assembly, "") : "", other?.GetValueOrDefault(p.Row.Id) ?? ""));
    }
}

/// <summary>A part that answers a search.</summary>
/// <param name="Score">0 to about 1; it orders the answers of one search and means nothing across searches.</param>
/// <param name="Words">One for each asked word that was found, in the order asked.</param>
public sealed record Found(PartWords Of, double Score, ImmutableArray<FoundWord> Words);

/// <summary>Why a part was found: the asked word and where it stands.</summary>
/// <param name="Asked">The word as it was searched: small letters, no accents.</param>
/// <param name="Text">The whole text it stands in, with <paramref name="Start"/> and <paramref name="Length"/> (characters) marking the word.</param>
public sealed record FoundWord(string Asked, FoundIn In, Likeness As, string Text, int Start, int Length)
{
    /// <summary>"carburetor" read as "Carburetter" in the name.</summary>
    public string Why
    {
        get
        {
            var written = Text.Substring(Start, Length);
            var where = In == FoundIn.Other ? "tags and places" : In.ToString().ToLowerInvariant();
            return string.Equals(written, Asked, StringComparison.OrdinalIgnoreCase)
                ? $"\"{written}\" in the {where}"
                : $"\"{Asked}\" read as \"{written}\" in the {where}";
        }
    }
}
