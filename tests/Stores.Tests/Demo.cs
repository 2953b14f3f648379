namespace WitnessMark.Stores.Tests;

/// <summary>The demonstration files of the repository, copied beside the tests.</summary>
static class Demo
{
    public static string Folder => Path.Combine(AppContext.BaseDirectory, "demo");

    public static VehicleFile Read() => VehicleFile.Read(Text("vehicle.csv"), Text("parts.csv"), Text("samples.csv")).Value;

    static string Text(string name) => File.ReadAllText(Path.Combine(Folder, name));
}
