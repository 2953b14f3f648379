using WitnessMark.Maths;

namespace WitnessMark.Web.Pairing.Trust;

/// <summary>
/// Secret files that only their owner may read, from the moment they are made: the mode is given to the call that makes them. A file is
/// written aside and moved into place, so it is there whole or not at all. On Windows the folder inherits the access of the one it lies
/// in, usually the person's own application data.
/// </summary>
public sealed class KeyFolder
{
    const UnixFileMode OwnersFile = UnixFileMode.UserRead | UnixFileMode.UserWrite, OwnersFolder = OwnersFile | UnixFileMode.UserExecute;
    const UnixFileMode Others = UnixFileMode.GroupRead | UnixFileMode.GroupWrite | UnixFileMode.GroupExecute | UnixFileMode.OtherRead | UnixFileMode.OtherWrite | UnixFileMode.OtherExecute;

    readonly string _path;

    /// <exception cref="RefusedException">It is there and open to others.</exception>
    public KeyFolder(string path)
    {
        _path = path;
        if (OperatingSystem.IsWindows()) Directory.CreateDirectory(path);
        else Directory.CreateDirectory(path, OwnersFolder);
        RefuseOpen("folder of keys", path, "chmod 700");
        // Left by a process that was killed while it wrote.
        foreach (var half in Directory.EnumerateFiles(path, "*.half")) File.Delete(half);
    }

    public string PathOf(string name) => Path.Combine(_path, name);

    /// <returns>Null when there is none.</returns>
    /// <exception cref="RefusedException">Others may read it.</exception>
    public string? Read(string name)
    {
        if (!File.Exists(PathOf(name))) return null;
        RefuseOpen("key file", PathOf(name), "chmod 600");
        return File.ReadAllText(PathOf(name));
    }

    /// <param name="replace">False: what stands already is left, and was written by another at the same moment.</param>
    public void Write(string name, string text, bool replace)
    {
        var half = PathOf($"{name}.{Guid.NewGuid():N}.half");
        var options = new FileStreamOptions { Mode = FileMode.CreateNew, Access = FileAccess.Write, Share = FileShare.None };
        if (!OperatingSystem.IsWindows()) options.UnixCreateMode = OwnersFile;
        using (var file = new FileStream(half, options))
        {
            file.Write(System.Text.Encoding.ASCII.GetBytes(text));
            file.Flush(flushToDisk: true);
        }
        if (replace || !File.Exists(PathOf(name))) File.Move(half, PathOf(name), overwrite: replace);
        else File.Delete(half);
    }

    /// <summary>Who may have read a key can speak as this house; that is for the person to judge, so nothing is tightened in silence.</summary>
    static void RefuseOpen(string what, string path, string command)
    {
        if (OperatingSystem.IsWindows() || (File.GetUnixFileMode(path) & Others) == 0) return;
        throw new RefusedException(new($"{what}: \"{path}\" is open to other users of this machine; \"{command}\" it if they are trusted, else delete it, and every phone must trust the house anew."));
    }
}
