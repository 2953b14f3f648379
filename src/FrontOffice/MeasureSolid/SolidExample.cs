namespace WitnessMark.FrontOffice.MeasureSolid;

/// <summary>A sheet in space to begin with: the demonstration's step bracket.</summary>
public static class SolidExample
{
    public static string Text { get; } = Read();

    static string Read()
    {
        using var stream = new StreamReader(typeof(SolidExample).Assembly.GetManifestResourceStream("step-bracket.csv")!);
        return stream.ReadToEnd();
    }
}
