using System.ComponentModel;
using System.Diagnostics;
using System.Globalization;
using System.Runtime.CompilerServices;
using System.Text;
using System.Text.Json;

namespace WitnessMark.PrintRoom.Tests;

/// <summary>Programs that read what the print room writes and had no part in writing it.</summary>
static class Outside
{
    const string NodeMissing = "node is not installed: these checks read DXF and STL back with it; install Node 20 or later";
    const string PopplerMissing = "{0} is not installed: these checks measure rendered pages; run: apt-get install poppler-utils";

    static readonly Lazy<string> s_readers = new(InstalledReaders);

    public static JsonElement Dxf(string text) => Read("dxf", Encoding.UTF8.GetBytes(text));

    public static JsonElement Stl(byte[] bytes) => Read("stl", bytes);

    /// <summary>The text a PDF gives up, page by page.</summary>
    public static string PdfText(byte[] pdf) => InFile(pdf, path => Poppler("pdftotext", ["-layout", path, "-"]));

    public static string PdfInfo(byte[] pdf) => InFile(pdf, path => Poppler("pdfinfo", ["-f", "1", "-l", "99", path]));

    /// <summary>One page in grey.</summary>
    public static Raster Page(byte[] pdf, int page, int dotsPerInch) => InFile(pdf, path =>
    {
        var number = page.ToString(CultureInfo.InvariantCulture);
        Poppler("pdftoppm", ["-r", dotsPerInch.ToString(CultureInfo.InvariantCulture), "-gray", "-f", number, "-l", number, "-singlefile", path, path]);
        try
        {
            return Raster.FromPgm(File.ReadAllBytes(path + ".pgm"), dotsPerInch / 25.4);
        }
        finally
        {
            File.Delete(path + ".pgm");
        }
    });

    static JsonElement Read(string kind, byte[] content) => InFile(content, path =>
        JsonDocument.Parse(Run("node", ["read.mjs", kind, path], s_readers.Value, NodeMissing)).RootElement);

    static string InstalledReaders()
    {
        var folder = Path.Combine(Here(), "npm");
        // npm writes this file last, so a broken installation is made again.
        if (!File.Exists(Path.Combine(folder, "node_modules/.package-lock.json")))
            Run("npm", ["ci", "--ignore-scripts", "--no-audit", "--no-fund"], folder, NodeMissing);
        return folder;
    }

    static string Poppler(string program, string[] arguments) =>
        Run(program, arguments, Path.GetTempPath(), string.Format(CultureInfo.InvariantCulture, PopplerMissing, program));

    static T InFile<T>(byte[] content, Func<string, T> use)
    {
        var path = Path.GetTempFileName();
        try
        {
            File.WriteAllBytes(path, content);
            return use(path);
        }
        finally
        {
            File.Delete(path);
        }
    }

    static string Run(string program, string[] arguments, string folder, string missing)
    {
        var start = new ProcessStartInfo(program, arguments) { WorkingDirectory = folder, RedirectStandardOutput = true, RedirectStandardError = true };
        Process process;
        try
        {
            process = Process.Start(start)!;
        }
        catch (Win32Exception)
        {
            Assert.Fail(missing);
            throw;
        }
        using (process)
        {
            var complaints = new StringBuilder();
            process.ErrorDataReceived += (_, line) => complaints.AppendLine(line.Data);
            process.BeginErrorReadLine();
            var output = process.StandardOutput.ReadToEnd();
            process.WaitForExit();
            Assert.True(process.ExitCode == 0, $"{program} {string.Join(' ', arguments)} gave {process.ExitCode}: {complaints}");
            if (program.StartsWith("pdf", StringComparison.Ordinal)) Assert.True(string.IsNullOrWhiteSpace(complaints.ToString()), $"{program}: {complaints}");
            return output;
        }
    }

    public static string Here([CallerFilePath] string path = "") => Path.GetDirectoryName(path)!;
}
