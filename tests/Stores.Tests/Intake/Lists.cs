using System.Collections.Immutable;
using System.Text;
using WitnessMark.Stores.Intake;

namespace WitnessMark.Stores.Tests.Intake;

/// <summary>Short ways to try a list against a small vehicle.</summary>
static class Lists
{
    public static readonly DateOnly Today = new(2031, 5, 4);

    public static readonly Vehicle Van = new(NamedId.Of(NamedId.Vehicles, "van"), "van", "Invented", "One", 1934, "");
    public static readonly VehicleSystem Body = new(NamedId.Of(Van.Id, "Body"), Van.Id, "Body", 0);
    public static readonly Part Wing = new(NamedId.Of(Body.Id, "Wing/LH"), Body.Id, "Wing", "W-1", Hand.LH, 1, "split", null);

    public static readonly VehicleTree Empty = new(new(Van, 1), [], [], [], []);
    public static readonly VehicleTree WithWing = new(new(Van, 1), [new(Body, 2)], [], [new(Wing, 3)], []);

    public static Task<ListPreview> Read(string text, VehicleTree? tree = null, ListSettings? settings = null) =>
        Read(Encoding.UTF8.GetBytes(text), tree, settings);

    public static Task<ListPreview> Read(byte[] bytes, VehicleTree? tree = null, ListSettings? settings = null) =>
        ListReader.Preview(bytes, tree ?? Empty, settings ?? new(), Today, null, TestContext.Current.CancellationToken);

    /// <summary>The tree after the changes, as the records would keep them.</summary>
    public static VehicleTree After(this VehicleTree tree, TreeChanges changes) => tree with
    {
        Systems = After(tree.Systems, changes.Systems, s => s.Id),
        Assemblies = After(tree.Assemblies, changes.Assemblies, a => a.Id),
        Parts = After(tree.Parts, changes.Parts, p => p.Id),
    };

    static ImmutableArray<Versioned<T>> After<T>(ImmutableArray<Versioned<T>> rows, ImmutableArray<RowChange<T>> changes, Func<T, Guid> id) where T : class
    {
        var standing = rows.ToDictionary(r => id(r.Row));
        foreach (var change in changes)
        {
            Assert.Equal(change.BasedOn, standing.GetValueOrDefault(id(change.Row)).Version);
            standing.Remove(id(change.Row));
            if (change.After is { } after) standing[id(after)] = new(after, change.BasedOn + 1);
        }
        return [.. standing.Values];
    }
}
