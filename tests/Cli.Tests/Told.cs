using WitnessMark.Cli;

namespace WitnessMark.Tests.Cli;

/// <summary>What one run of the command line said.</summary>
sealed record Told(int Code, string Out, string Error)
{
    public static Told By(params string[] args)
    {
        using var written = new StringWriter { NewLine = "\n" };
        using var error = new StringWriter { NewLine = "\n" };
        var code = Wmark.Run(args, new Desk(written, error, TimeProvider.System));
        return new Told(code, written.ToString(), error.ToString());
    }
}
