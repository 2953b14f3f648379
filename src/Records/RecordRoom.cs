using System.Data.Common;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Diagnostics;
using WitnessMark.Maths;
using WitnessMark.PlanningOffice;
using WitnessMark.Stores;
using WitnessMark.Stores.Devices;
using WitnessMark.Stores.Keeping;
using WitnessMark.Stores.Photographs;

namespace WitnessMark.Records;

/// <summary>
/// One file of records. What a port has acknowledged is on the disk: SQLite in write-ahead logging with synchronous=FULL,
/// which syncs the log at every commit (sqlite.org, PRAGMA synchronous), so a killed process loses nothing and a power
/// cut no more than the disk itself forgets.
/// </summary>
public sealed class RecordRoom
{
    readonly DbContextOptions<RecordsDb> _options;
    readonly string _connection;
    readonly FactShelf _shelf = new();

    RecordRoom(string path)
    {
        Path = path;
        _connection = ConnectionTo(path);
        _options = Options(path);
        Pictures = new PictureFolder(PicturesOf(path));
        Albums = new PictureAlbums(Db, _shelf);
        Stamp = new RecordStamp(_connection);
    }

    /// <summary>Where the pictures of a file of records lie: beside it.</summary>
    public static string PicturesOf(string path) => path + ".pictures";

    /// <summary>The file.</summary>
    public string Path { get; }

    /// <summary>How every connection to a file of records is made.</summary>
    public static DbContextOptions<RecordsDb> Options(string path) =>
        new DbContextOptionsBuilder<RecordsDb>().UseSqlite(ConnectionTo(path)).AddInterceptors(new FullSync()).Options;

    public IVehicleStore Vehicles => new VehicleStore(Db);

    public IReadingLog Readings => new ReadingLog(Db);

    public IBenchStore Bench => new BenchStore(Db);

    public IJobStore Jobs => new JobStore(Db);

    public IHoursLog Hours => new HoursLog(Db, _shelf, TimeProvider.System);

    public IStoresDesk Desk => new StoresDesk(Db, _shelf);

    public IDeviceStore Devices => new DeviceStore(Db);

    /// <summary>In a folder beside the file, under its name and ".pictures".</summary>
    public IPictureStore Pictures { get; }

    public IRecordStamp Stamp { get; }

    public IPictureAlbums Albums { get; }

    /// <summary>Opens the file, makes it if there is none, and brings its tables up to date.</summary>
    /// <exception cref="RefusedException">It is not a file of records, or cannot be opened.</exception>
    public static async Task<RecordRoom> Open(string path, CancellationToken cancel = default)
    {
        var room = new RecordRoom(path);
        try
        {
            if (!await room.Begin(cancel))
            {
                await using var db = room.Db();
                await db.Database.MigrateAsync(cancel);
            }
        }
        catch (SqliteException wrong)
        {
            throw new RefusedException(Refusal.Of("records file", path, $"give a file of records or a new name in a folder that can be written ({wrong.Message})"));
        }
        return room;
    }

    /// <summary>Makes ready what the first read takes longest for, EF's model and query, so that nobody waits for it. Changes nothing.</summary>
    public async Task WarmUp(CancellationToken cancel = default) => await Vehicles.Vehicles(cancel);

    /// <summary>A whole copy while work goes on. The file appears under its name only when it is complete and sound.</summary>
    /// <exception cref="RefusedException">The name is taken: a backup never overwrites.</exception>
    public async Task Backup(string path, CancellationToken cancel = default)
    {
        if (File.Exists(path)) throw new RefusedException(Refusal.Of("backup file", path, "it exists already; give a new name"));
        var half = path + ".half";
        File.Delete(half);
        await using (var from = new SqliteConnection(_connection))
        await using (var to = new SqliteConnection(new SqliteConnectionStringBuilder { DataSource = half, Pooling = false }.ToString()))
        {
            await from.OpenAsync(cancel);
            await to.OpenAsync(cancel);
            from.BackupDatabase(to);
            await using var check = to.CreateCommand();
            check.CommandText = "PRAGMA integrity_check";
            if (await check.ExecuteScalarAsync(cancel) is not "ok") throw new IOException($"The copy at {half} is not sound; the records themselves are untouched.");
        }
        File.Move(half, path);
    }

    /// <summary>Looks at the tables before anything is changed in a file that may be another program's.</summary>
    /// <returns>Whether they are up to date.</returns>
    async Task<bool> Begin(CancellationToken cancel)
    {
        await using var file = new SqliteConnection(_connection);
        await file.OpenAsync(cancel);
        var upToDate = await Tables.AreUpToDate(file, Path, cancel);
        await using var log = file.CreateCommand();
        log.CommandText = "PRAGMA journal_mode=WAL";
        await log.ExecuteNonQueryAsync(cancel);
        return upToDate;
    }

    static string ConnectionTo(string path) => new SqliteConnectionStringBuilder { DataSource = path, ForeignKeys = true }.ToString();

    RecordsDb Db() => new(_options);

    /// <summary>The setting belongs to the connection, so each one gets it.</summary>
    sealed class FullSync : DbConnectionInterceptor
    {
        const string Pragma = "PRAGMA synchronous=FULL";

        public override void ConnectionOpened(DbConnection connection, ConnectionEndEventData eventData)
        {
            using var command = connection.CreateCommand();
            command.CommandText = Pragma;
            command.ExecuteNonQuery();
        }

        public override async Task ConnectionOpenedAsync(DbConnection connection, ConnectionEndEventData eventData, CancellationToken cancellationToken = default)
        {
            await using var command = connection.CreateCommand();
            command.CommandText = Pragma;
            await command.ExecuteNonQueryAsync(cancellationToken);
        }
    }
}
