using System.Collections.Immutable;

namespace WitnessMark.Stores.ComingApart;

/// <summary>
/// A typed list of how a thing came apart: <c>part,after,because</c>, a line for each thing that had to come off before the part, or one with
/// an empty <c>after</c>. A fourth column <c>when</c> may say <c>off</c> (usual) or <c>on</c>: then the part goes back on after the other.
/// Names are compared without case. The further down a part is first named, the later it came off.
/// </summary>
public static class RefitTable
{
    static readonly Guid Names = new("c5b7f7d0-9a0a-4f0e-8f2b-3f6f7a1a9a55");

    /// <exception cref="Maths.RefusedException">The list is not such a table.</exception>
    public static RefitPlan Read(string text)
    {
        var parts = new Dictionary<Guid, RefitPart>();
        Guid Part(string name)
        {
            var id = NamedId.Of(Names, name.ToLowerInvariant());
            parts.TryAdd(id, new(id, name, null));
            return id;
        }
        var links = ImmutableArray.CreateBuilder<RefitLink>();
        var rows = Rows(text);
        foreach (var row in rows)
        {
            if (row["part"] == "") throw new Maths.RefusedException(row.Refuse("part", "name the part"));
            var part = Part(row["part"]);
            parts[part] = parts[part] with { OffAt = parts[part].OffAt ?? DateTimeOffset.UnixEpoch.AddSeconds(row.Line) };
            if (row["after"] == "") continue;
            var other = Part(row["after"]);
            if (other == part) throw new Maths.RefusedException(row.Refuse("after", "a part cannot wait for itself"));
            links.Add(Link(row, part, other));
        }
        return RefitOrder.Of([.. parts.Values], links.ToImmutable());
    }

    static RefitLink Link(CsvRow row, Guid part, Guid other)
    {
        var (name, after, why) = (row["part"], row["after"], row["because"]);
        return (row.Head.Contains("when") ? row["when"].ToLowerInvariant() : "") switch
        {
            "" or "off" => new(part, other, why == "" ? $"the {after} had to come off before the {name}" : why),
            "on" => new(other, part, why == "" ? $"the {after} goes on before the {name}" : why),
            _ => throw new Maths.RefusedException(row.Refuse("when", "write off or on, or leave it empty")),
        };
    }

    static ImmutableArray<CsvRow> Rows(string text)
    {
        var head = text.TrimStart('\uFEFF').Split('\n').FirstOrDefault(l => l.Trim() is not ("" or ['#', ..]), "");
        return head.Split(',').Any(c => c.Trim() == "when")
            ? CsvTable.Read(text, "part", "after", "because", "when").Value.Rows
            : CsvTable.Read(text, "part", "after", "because").Value.Rows;
    }
}
