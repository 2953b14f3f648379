using Microsoft.Data.Sqlite;
using WitnessMark.Maths;
using WitnessMark.Stores;
using WitnessMark.Tests;

namespace WitnessMark.Records.Tests;

public sealed class ReadingLogTests : RoomFile
{
    [Fact]
    [Truth(Grade.Property, "exactly once: sending again changes nothing")]
    public async Task The_same_reading_sent_again_is_recorded_once()
    {
        var log = (await Furnished()).Readings;
        Assert.Equal(2, await log.Append([Reading(1), Reading(2)]));
        Assert.Equal(1, await log.Append([Reading(2), Reading(3), Reading(3)]));
        Assert.Equal([Reading(1), Reading(2), Reading(3)], (await log.History(Original.Id)).Standing);
    }

    [Fact]
    [Truth(Grade.Property, "exactly once, with many senders at a time")]
    public async Task Many_senders_at_once_record_each_reading_once()
    {
        var log = (await Furnished()).Readings;
        var readings = Enumerable.Range(1, 40).Select(Reading).ToList();
        var added = await Task.WhenAll(Enumerable.Range(0, 6).Select(_ => Task.Run(() => log.Append(readings))));
        Assert.Equal(40, added.Sum());
        Assert.Equal(40, (await log.History(Original.Id)).Readings.Count);
    }

    [Fact]
    [Truth(Grade.Property, "a fact on record is never altered, whether asked politely or not")]
    public async Task A_reading_on_record_cannot_be_altered()
    {
        var log = (await Furnished()).Readings;
        await log.Append([Reading(1)]);
        var refused = await Assert.ThrowsAsync<RefusedException>(() => log.Append([Reading(2), Reading(1) with { Value = "84" }]));
        Assert.Contains("never altered", refused.Message);
        Assert.Equal([Reading(1)], (await log.History(Original.Id)).Readings);

        await using var file = new SqliteConnection($"Data Source={PathOf("records.db")}");
        await file.OpenAsync();
        foreach (var sql in new[] { "UPDATE readings SET Value = '84'", "DELETE FROM readings" })
        {
            await using var command = file.CreateCommand();
            command.CommandText = sql;
            Assert.Contains("append-only", (await Assert.ThrowsAsync<SqliteException>(() => command.ExecuteNonQueryAsync())).Message);
        }
    }

    [Fact]
    [Truth(Grade.Property, "undo is one more entry")]
    public async Task A_withdrawn_reading_stays_on_record_and_no_longer_stands()
    {
        var log = (await Furnished()).Readings;
        await log.Append([Reading(1), Reading(2)]);
        var back = new Withdrawal(new Guid(77, 0, 0, new byte[8]), Reading(1).Id, "wrong hole", Noon, "phone");
        Assert.Equal(1, await log.Withdraw([back]));
        Assert.Equal(0, await log.Withdraw([back]));
        var history = await log.History(Original.Id);
        Assert.Equal([Reading(2)], history.Standing);
        Assert.Equal([Reading(1), Reading(2)], history.Readings);
        Assert.Equal([back], history.Withdrawals);
        await Assert.ThrowsAsync<RefusedException>(() => log.Withdraw([back with { Id = Guid.NewGuid(), ReadingId = Guid.NewGuid() }]));
    }

    [Fact]
    [Truth(Grade.Property, "all or nothing")]
    public async Task One_bad_reading_keeps_the_whole_lot_out()
    {
        var log = (await Furnished()).Readings;
        await Assert.ThrowsAsync<RefusedException>(() => log.Append([Reading(1), Reading(2) with { From = " " }]));
        await Assert.ThrowsAsync<RefusedException>(() => log.Append([Reading(1), Reading(2) with { SampleId = Guid.NewGuid() }]));
        Assert.Empty((await log.History(Original.Id)).Readings);
    }

    [Fact]
    [Truth(Grade.Property, "a reading is kept as typed, whatever was typed")]
    public async Task Whatever_was_typed_is_kept_as_typed()
    {
        var log = (await Furnished()).Readings;
        var odd = Reading(1) with { Value = "  3 5/16″ ; 84,1 mm\n'); DROP TABLE readings;--", Note = "ø Ğ 🔧 \"", PlusMinus = "±½ thou" };
        await log.Append([odd]);
        Assert.Equal([odd], (await log.History(Original.Id)).Standing);
    }
}
