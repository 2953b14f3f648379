using System.Text.RegularExpressions;

namespace WitnessMark.Browser.Shell;

/// <summary>The addresses of all pages as the sources have them, so that a page that is added is looked at without being listed.</summary>
static partial class Routes
{
    /// <summary>What each parameter of a route stands for in the filled van; a page with another one must say here what to put.</summary>
    static readonly Dictionary<string, Func<FilledVan, string>> Values = new()
    {
        ["VehicleId"] = v => $"{v.Vehicle}",
        ["PartId"] = v => v.Part("Dynamo mounting plate")[^36..],
        ["SampleId"] = v => v.Sample("Dynamo mounting plate")[^36..],
        ["Code"] = v => v.Code,
        ["TakenId"] = v => $"{v.Taken}",
        ["PairId"] = v => $"{v.Pair}",
    };

    /// <summary>As written after <c>@page</c>, without the first stroke.</summary>
    public static IReadOnlyList<string> All { get; } =
    [
        .. Directory.EnumerateFiles(Path.Combine(Root(), "src", "Web.Client"), "*.razor", SearchOption.AllDirectories)
            .Where(f => !f.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}"))
            .SelectMany(f => Page().Matches(File.ReadAllText(f)).Select(m => m.Groups[1].Value.TrimStart('/'))).Order(StringComparer.Ordinal),
    ];

    public static string Filled(string route, FilledVan van) =>
        Parameter().Replace(route, m => Values.TryGetValue(m.Groups[1].Value, out var value) ? value(van) : throw new InvalidOperationException($"{route}: say in Routes what stands for {m.Groups[1].Value}."));

    /// <summary>Short enough for the name of a file.</summary>
    public static string Name(string route) => route.Length == 0 ? "vehicles" : Parameter().Replace(route, m => m.Groups[1].Value is "VehicleId" or "PartId" or "SampleId" ? "" : "one").Replace("//", "/").Trim('/').Replace('/', '-').Replace("--", "-");

    static string Root()
    {
        var root = new DirectoryInfo(AppContext.BaseDirectory);
        while (root is not null && !File.Exists(Path.Combine(root.FullName, "WitnessMark.slnx"))) root = root.Parent;
        return root!.FullName;
    }

    [GeneratedRegex("^@page \"([^\"]*)\"", RegexOptions.Multiline)]
    private static partial Regex Page();

    [GeneratedRegex(@"\{(\w+)[^}]*\}")]
    private static partial Regex Parameter();
}
