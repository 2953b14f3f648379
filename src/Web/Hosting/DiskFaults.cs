using Microsoft.Data.Sqlite;

namespace WitnessMark.Web.Hosting;

/// <summary>What the operating system and SQLite throw when the disk cannot take what is to be kept.</summary>
static class DiskFaults
{
    // sqlite.org/rescode.html
    const int Full = 13, ReadOnly = 8, InputOutput = 10;

    // ENOSPC, EDQUOT (Linux), EDQUOT (macOS); ERROR_DISK_FULL, ERROR_HANDLE_DISK_FULL as results (Windows).
    static readonly int[] NoRoom = [28, 122, 69, unchecked((int)0x80070070), unchecked((int)0x80070027)];

    public const string Sentence = "The disk that holds the records is full or cannot be written; nothing of this was kept on it. Make room there, and send it again.";

    public static bool Tells(Exception? e) => e switch
    {
        null => false,
        SqliteException { SqliteErrorCode: Full or ReadOnly or InputOutput } => true,
        IOException io when NoRoom.Contains(io.HResult) => true,
        _ => Tells(e.InnerException),
    };
}
