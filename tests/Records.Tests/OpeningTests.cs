using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;
using WitnessMark.Maths;
using WitnessMark.Tests;

namespace WitnessMark.Records.Tests;

/// <summary>What becomes of a file when it is opened.</summary>
public sealed class OpeningTests : RoomFile
{
    /// <summary>EF makes it whenever it migrates; it says here whether it did.</summary>
    const string Lock = "__EFMigrationsLock";

    [Fact]
    [Truth(Grade.SecondImplementation, "EF Core's own migrator has nothing to add to a file that was opened without it")]
    public async Task A_file_that_is_up_to_date_is_opened_without_migrating()
    {
        await Furnished();
        await Do($"DROP TABLE {Lock}");
        var room = await RecordRoom.Open(PathOf("records.db"));
        Assert.Equal(0L, await Do($"SELECT count(*) FROM sqlite_master WHERE name = '{Lock}'"));
        Assert.Equal("wal", await Do("PRAGMA journal_mode"));
        Assert.Equal(Van, Assert.Single(await room.Vehicles.Vehicles()).Row);
        await using var db = new RecordsDb(RecordRoom.Options(PathOf("records.db")));
        Assert.Empty(await db.Database.GetPendingMigrationsAsync());
    }

    [Fact]
    [Truth(Grade.SecondImplementation, "EF Core's own migrator wrote the older file, and has nothing to add when it has been opened")]
    public async Task An_older_file_is_migrated()
    {
        await using var db = new RecordsDb(RecordRoom.Options(PathOf("records.db")));
        await db.GetService<IMigrator>().MigrateAsync("Desk");
        Assert.NotEmpty(await db.Database.GetPendingMigrationsAsync());
        var room = await RecordRoom.Open(PathOf("records.db"));
        Assert.Empty(await db.Database.GetPendingMigrationsAsync());
        Assert.Empty(await room.Devices.All());
    }

    [Fact]
    [Truth(Grade.Property, "a program does not write into tables that it does not know")]
    public async Task A_file_of_a_newer_program_is_refused_and_left_as_it_was()
    {
        await Furnished();
        await Do("INSERT INTO __EFMigrationsHistory VALUES ('20990101000000_Later', '99.0.0')");
        var said = (await Assert.ThrowsAsync<RefusedException>(() => RecordRoom.Open(PathOf("records.db")))).Message;
        Assert.Contains("records file", said);
        Assert.Contains(PathOf("records.db"), said);
        Assert.Contains("newer Witness Mark", said);
        Assert.Contains("20990101000000_Later", said);
        Assert.Equal(1L, await Do("SELECT count(*) FROM vehicles"));
    }

    [Fact]
    [Truth(Grade.Property, "another program's database is refused before anything in it is changed")]
    public async Task Another_programs_database_is_refused_and_left_as_it_was()
    {
        await Do("CREATE TABLE letters (id INTEGER)");
        SqliteConnection.ClearAllPools();
        var before = await File.ReadAllBytesAsync(PathOf("records.db"));
        var said = (await Assert.ThrowsAsync<RefusedException>(() => RecordRoom.Open(PathOf("records.db")))).Message;
        SqliteConnection.ClearAllPools();
        Assert.Contains("another program's database (it has a table \"letters\")", said);
        Assert.Equal(before, await File.ReadAllBytesAsync(PathOf("records.db")));
    }

    [Fact]
    [Truth(Grade.Property, "an empty file, and an opening that was cut short after its first table, are begun")]
    public async Task What_was_hardly_begun_is_begun_again()
    {
        await File.WriteAllBytesAsync(PathOf("records.db"), []);
        await Do("CREATE TABLE __EFMigrationsHistory (MigrationId TEXT NOT NULL CONSTRAINT PK___EFMigrationsHistory PRIMARY KEY, ProductVersion TEXT NOT NULL)");
        Assert.Empty(await (await RecordRoom.Open(PathOf("records.db"))).Vehicles.Vehicles());
    }

    async Task<object?> Do(string command)
    {
        await using var file = new SqliteConnection($"Data Source={PathOf("records.db")}");
        await file.OpenAsync();
        await using var asked = file.CreateCommand();
        asked.CommandText = command;
        return await asked.ExecuteScalarAsync();
    }
}
