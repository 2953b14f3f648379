namespace WitnessMark.Tests.FrontOffice;

/// <summary>The demonstration vehicle's files, as they lie in the house.</summary>
static class Demo
{
    public static string Text(string name) => File.ReadAllText(Path.Combine("demo", name));

    public static byte[] Bytes(string name) => File.ReadAllBytes(Path.Combine("demo", name));

    public static string? Sheet(string name) => File.Exists(Path.Combine("demo", name)) ? Text(name) : null;
}
