using System.Reflection;

namespace WitnessMark.Tests.Architecture;

/// <summary>The rooms, which way their arrows point, and where their files lie.</summary>
static class House
{
    /// <summary>Room → rooms it may use. Nothing else is allowed.</summary>
    public static IReadOnlyDictionary<string, string[]> Arrows { get; } = new Dictionary<string, string[]>
    {
        ["Maths"] = [],
        ["PrintRoom"] = ["Maths"],
        ["Trade"] = ["Maths"],
        ["DrawingOffice"] = ["Maths", "PrintRoom", "Trade"],
        ["Stores"] = ["Maths", "PrintRoom", "Trade"],
        ["PlanningOffice"] = ["Maths", "PrintRoom", "Trade", "Stores"],
        ["FrontOffice"] = ["Maths", "PrintRoom", "Trade", "DrawingOffice", "Stores", "PlanningOffice"],
        // Native solvers behind the ports of the pure rooms; only Web and Cli compose them.
        ["OuterRoom"] = ["Maths", "PrintRoom", "Trade", "Stores", "PlanningOffice"],
        ["Records"] = ["Maths", "Stores", "PlanningOffice"],
        ["Web.Client"] = [.. Offices, "FrontOffice"],
        ["Web"] = [.. Offices, "FrontOffice", "OuterRoom", "Records", "Web.Client"],
        ["Cli"] = [.. Offices, "FrontOffice", "OuterRoom", "Records"],
    };

    static string[] Offices => ["Maths", "PrintRoom", "Trade", "DrawingOffice", "Stores", "PlanningOffice"];

    /// <summary>The rooms that also run in the browser: pure managed code, no files, no native parts.</summary>
    public static string[] PureRooms { get; } = [.. Offices, "FrontOffice"];

    public static string Root { get; } = FindRoot();

    public static Assembly Assembly(string room) =>
        System.Reflection.Assembly.Load(room == "Cli" ? "wmark" : $"WitnessMark.{room}");

    /// <summary>Files a person wrote under one top folder; paths relative to the root with forward slashes.</summary>
    public static IEnumerable<string> Files(string top, params string[] endings) =>
        from path in Directory.EnumerateFiles(Path.Combine(Root, top), "*", SearchOption.AllDirectories)
        let name = Path.GetRelativePath(Root, path).Replace('\\', '/')
        where endings.Any(e => name.EndsWith(e, StringComparison.OrdinalIgnoreCase))
        where !Made.Any(m => name.Contains(m))
        select name;

    public static string Read(string name) => File.ReadAllText(Path.Combine(Root, name));

    static readonly string[] Made = ["/bin/", "/obj/", "/node_modules/", "/Migrations/", "/artifacts/", "/TestResults/"];

    static string FindRoot()
    {
        var at = new DirectoryInfo(AppContext.BaseDirectory);
        while (at is not null && !File.Exists(Path.Combine(at.FullName, "WitnessMark.slnx"))) at = at.Parent;
        return at?.FullName ?? throw new InvalidOperationException("WitnessMark.slnx stands in no folder above the tests.");
    }
}
