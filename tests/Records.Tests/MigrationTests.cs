using System.Text.Json;
using System.Text.Json.Serialization;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;
using WitnessMark.PlanningOffice;
using WitnessMark.Tests;

namespace WitnessMark.Records.Tests;

/// <summary>Files of records made by earlier versions.</summary>
public sealed class MigrationTests : RoomFile
{
    static readonly JsonSerializerOptions Spelling = new() { Converters = { new JsonStringEnumConverter() } };

    static readonly ThreePoint Hour = new(0.5, 1, 2.25);

    static readonly RouteCard Card = new("pin", 1,
        [new("bar", null, 0.1, new(1.10m, 2.20m, 3.30m, "GBP"), "own")],
        [
            new(1, "turn", "lathe", Hour, "own", Cost.None("GBP"), [], null),
            new(2, "plate", "none", Hour, "own", new(10.05m, 12m, 15m, "GBP"), ["gloves"], new("no bath", new(7, 10, 21))),
        ], []);

    [Fact]
    [Truth(Grade.Property, "a job kept before the plan says afterwards what its card says")]
    public async Task A_job_of_before_is_carried_over()
    {
        await Before("FoldedParts", $"""
            INSERT INTO vehicles (Id, Name, Maker, Model, Year, Notes, Version) VALUES ('{Van.Id}', 'van', 'Invented', 'One', 1934, '', 1);
            INSERT INTO systems (Id, VehicleId, Name, "Order", Version) VALUES ('{Body.Id}', '{Van.Id}', 'body', 0, 1);
            INSERT INTO parts (Id, SystemId, Name, Reference, Hand, Quantity, Condition, Route, Version) VALUES ('{Bracket.Id}', '{Body.Id}', 'bracket', 'B-1', 'LH', 2, 'rusted', NULL, 3);
            """, "INSERT INTO jobs (Id, PartId, Title, State, Card, Version) VALUES ($id, $part, 'pin', 'InHand', $card, 4)");

        var room = await RecordRoom.Open(PathOf("records.db"));
        var (job, version) = Assert.Single(await room.Jobs.Jobs(Van.Id));
        Assert.Equal(4, version);
        Assert.Equal((Van.Id, Body.Id, Bracket.Id), (job.VehicleId, job.SystemId, job.PartId));
        Assert.Equal((WorkKind.Make, JobState.InHand, "pin"), (job.Kind, job.State, job.Title));
        Assert.Equal((Card.Hours, Card.Cost), (job.Hours, job.Cost));
        Assert.Equal(Text(Job.Of(job.Id, Van.Id, Body.Id, Bracket.Id, Card) with { State = JobState.InHand, Cost = job.Cost }), Text(job));
        Assert.Null(job.Wrong);
        Assert.False((await room.Jobs.Save(job with { State = JobState.Done }, 4)).Clash);
        var part = Assert.Single((await room.Vehicles.Tree(Van.Id))!.Parts);
        Assert.Equal((Bracket with { Route = null }, 3), (part.Row, part.Version));
    }

    [Fact]
    [Truth(Grade.Property, "the tables that the migrations make are the ones the rooms ask for, and the way back is open")]
    public async Task Migrations_and_model_agree()
    {
        await Furnished();
        await using var db = new RecordsDb(RecordRoom.Options(PathOf("records.db")));
        Assert.False(db.Database.HasPendingModelChanges());
        await db.GetService<IMigrator>().MigrateAsync("FoldedParts");
        await db.Database.MigrateAsync();
        Assert.Single((await (await RecordRoom.Open(PathOf("records.db"))).Vehicles.Tree(Van.Id))!.Parts);
    }

    static string Text<T>(T value) => JsonSerializer.Serialize(value, Spelling);

    async Task Before(string migration, string rows, string job)
    {
        await using (var db = new RecordsDb(RecordRoom.Options(PathOf("records.db"))))
        {
            await db.GetService<IMigrator>().MigrateAsync(migration);
        }
        await using var old = new SqliteConnection($"Data Source={PathOf("records.db")}");
        await old.OpenAsync();
        await using var command = old.CreateCommand();
        // Ids are kept as upper-case text.
        command.CommandText = rows.Replace(Van.Id.ToString(), Van.Id.ToString().ToUpperInvariant()) + job;
        command.Parameters.AddWithValue("$id", Guid.NewGuid());
        command.Parameters.AddWithValue("$part", Bracket.Id);
        command.Parameters.AddWithValue("$card", Text(Card));
        await command.ExecuteNonQueryAsync();
    }
}
