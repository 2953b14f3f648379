namespace WitnessMark.Tests.Cli;

/// <summary>A folder of its own for one test, gone afterwards.</summary>
sealed class Place : IDisposable
{
    readonly string _folder = Directory.CreateTempSubdirectory("wmark-").FullName;

    public string At(string name) => Path.Combine(_folder, name);

    public string Write(string name, string text)
    {
        File.WriteAllText(At(name), text);
        return At(name);
    }

    public string[] Files => [.. Directory.GetFiles(_folder).Select(f => Path.GetFileName(f)).Order()];

    public void Dispose() => Directory.Delete(_folder, recursive: true);
}
