using System.Diagnostics;
using System.Globalization;
using Microsoft.EntityFrameworkCore;
using WitnessMark.Maths;
using WitnessMark.Stores;
using WitnessMark.Tests;

namespace WitnessMark.Records.Tests;

public sealed class DurabilityTests : RoomFile
{
    public static ReadingEntry Nth(int n) => Reading(n);

    [Theory]
    [InlineData(1)]
    [InlineData(25)]
    [InlineData(120)]
    [Truth(Grade.Property, "a process killed in mid-writing loses nothing it acknowledged and leaves nothing half")]
    public async Task A_killed_process_loses_nothing_acknowledged(int killAfter)
    {
        await Furnished();
        var acknowledged = await KillAfter(killAfter);
        Assert.True(acknowledged >= killAfter);

        var room = await RecordRoom.Open(PathOf("records.db"));
        var standing = (await room.Readings.History(Original.Id)).Standing;
        // At most the one reading under way when the kill came may be there besides.
        Assert.InRange(standing.Count, acknowledged, acknowledged + 1);
        Assert.Equal(Enumerable.Range(1, standing.Count).Select(Nth), standing);

        // The phone sends again what it has no answer for: it is there once.
        await room.Readings.Append([Nth(acknowledged), Nth(acknowledged + 1)]);
        Assert.Equal(Enumerable.Range(1, acknowledged + 1).Select(Nth), (await room.Readings.History(Original.Id)).Standing);
    }

    /// <returns>The last number the child said before it died.</returns>
    async Task<int> KillAfter(int number)
    {
        var start = new ProcessStartInfo(Environment.ProcessPath!) { RedirectStandardOutput = true };
        if (Path.GetFileNameWithoutExtension(Environment.ProcessPath) == "dotnet") start.ArgumentList.Add(typeof(KilledWriter).Assembly.Location);
        start.Environment[KilledWriter.Variable] = PathOf("records.db");
        using var child = Process.Start(start)!;
        var last = 0;
        while (await child.StandardOutput.ReadLineAsync() is { } line)
        {
            last = int.Parse(line, CultureInfo.InvariantCulture);
            if (last == number) child.Kill();
        }
        await child.WaitForExitAsync();
        return last;
    }

    [Fact]
    [Truth(Grade.Published, "sqlite.org, PRAGMA synchronous: 2 is FULL; PRAGMA journal_mode: wal")]
    public async Task The_file_is_in_write_ahead_logging_with_full_sync()
    {
        await Furnished();
        await using var db = new RecordsDb(RecordRoom.Options(PathOf("records.db")));
        await db.Database.OpenConnectionAsync();
        Assert.Equal("wal", await Ask("PRAGMA journal_mode"));
        Assert.Equal(2L, await Ask("PRAGMA synchronous"));
        Assert.Equal(1L, await Ask("PRAGMA foreign_keys"));

        async Task<object?> Ask(string pragma)
        {
            await using var command = db.Database.GetDbConnection().CreateCommand();
            command.CommandText = pragma;
            return await command.ExecuteScalarAsync();
        }
    }

    [Fact]
    [Truth(Grade.Property, "a backup taken while writing goes on opens as records of its own, and never overwrites")]
    public async Task A_backup_is_whole_and_never_overwrites()
    {
        var room = await Furnished();
        await room.Readings.Append([.. Enumerable.Range(1, 50).Select(Nth)]);
        var writing = Task.Run(async () => { for (var n = 51; n <= 80; n++) await room.Readings.Append([Nth(n)]); });
        await room.Backup(PathOf("copy.db"));
        await writing;
        var copy = await RecordRoom.Open(PathOf("copy.db"));
        var kept = (await copy.Readings.History(Original.Id)).Standing;
        Assert.InRange(kept.Count, 50, 80);
        Assert.Equal(Enumerable.Range(1, kept.Count).Select(Nth), kept);
        Assert.Contains("exists already", (await Assert.ThrowsAsync<RefusedException>(() => room.Backup(PathOf("copy.db")))).Message);
    }

    [Fact]
    [Truth(Grade.Property, "bad files are refused in words")]
    public async Task What_is_no_records_file_is_refused()
    {
        await File.WriteAllTextAsync(PathOf("letter.txt"), new string('x', 5000));
        Assert.Contains("records file", (await Assert.ThrowsAsync<RefusedException>(() => RecordRoom.Open(PathOf("letter.txt")))).Message);
        Assert.Contains("records file", (await Assert.ThrowsAsync<RefusedException>(() => RecordRoom.Open(PathOf("no/such/folder.db")))).Message);
    }

    [Fact]
    [Truth(Grade.Property, "the migrations describe the model as it is")]
    public async Task No_change_of_the_model_lacks_its_migration()
    {
        await Furnished();
        await using var db = new RecordsDb(RecordRoom.Options(PathOf("records.db")));
        Assert.False(db.Database.HasPendingModelChanges());
    }
}
