using System.Collections.Immutable;
using System.Reflection;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore.Migrations;
using WitnessMark.Maths;

namespace WitnessMark.Records;

/// <summary>
/// How far the tables of a file have come, asked in plain SQL: a migration first makes EF's model, which takes most of a second, and a file
/// that is up to date needs nothing of it to be opened.
/// </summary>
static class Tables
{
    const string History = "__EFMigrationsHistory";

    /// <summary>The migrations that this program has.</summary>
    static ImmutableHashSet<string> Known() =>
        [.. typeof(RecordsDb).Assembly.GetTypes().Where(t => t.BaseType == typeof(Migration)).Select(t => t.GetCustomAttribute<MigrationAttribute>()!.Id)];

    /// <summary>Whether the file has all of them.</summary>
    /// <exception cref="RefusedException">The tables are another program's, or those of a newer version of this one.</exception>
    public static async Task<bool> AreUpToDate(SqliteConnection file, string path, CancellationToken cancel)
    {
        var tables = await Texts(file, "SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite\\_%' ESCAPE '\\'", cancel);
        // EF's own tables come first: a first opening that was cut short leaves them alone.
        if (tables.FirstOrDefault(t => !t.StartsWith("__EFMigrations", StringComparison.Ordinal)) is { } other && !tables.Contains(History))
            throw new RefusedException(Refusal.Of("records file", path, $"give a file of records or a new name; this is another program's database (it has a table \"{other}\")"));
        if (!tables.Contains(History)) return false;
        var (known, done) = (Known(), await Texts(file, $"SELECT MigrationId FROM {History} ORDER BY MigrationId", cancel));
        if (done.LastOrDefault(m => !known.Contains(m)) is { } newer)
            throw new RefusedException(Refusal.Of("records file", path, $"open it with the newer Witness Mark that wrote it, or give another file; this one does not know its tables ({newer})"));
        return known.IsSubsetOf(done);
    }

    static async Task<ImmutableArray<string>> Texts(SqliteConnection file, string query, CancellationToken cancel)
    {
        await using var command = file.CreateCommand();
        command.CommandText = query;
        await using var rows = await command.ExecuteReaderAsync(cancel);
        var texts = ImmutableArray.CreateBuilder<string>();
        while (await rows.ReadAsync(cancel)) texts.Add(rows.GetString(0));
        return texts.ToImmutable();
    }
}
