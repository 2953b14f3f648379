using System.Diagnostics;
using System.Security.Cryptography.X509Certificates;

namespace WitnessMark.Web.Tests.Pairing;

/// <summary>OpenSSL's command line, in a folder of its own.</summary>
sealed class OpenSsl : IDisposable
{
    readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("wm-openssl-");

    public string Write(string name, X509Certificate2 certificate)
    {
        var path = Path.Combine(_folder.FullName, name);
        File.WriteAllText(path, certificate.ExportCertificatePem());
        return path;
    }

    public async Task<(int Code, string Said)> Run(params string[] args)
    {
        using var run = Process.Start(new ProcessStartInfo("openssl", args) { RedirectStandardOutput = true, RedirectStandardError = true, WorkingDirectory = _folder.FullName })!;
        var errors = run.StandardError.ReadToEndAsync();
        var said = await run.StandardOutput.ReadToEndAsync();
        await run.WaitForExitAsync();
        return (run.ExitCode, said + await errors);
    }

    public void Dispose() => _folder.Delete(recursive: true);
}
