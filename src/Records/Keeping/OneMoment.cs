using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;

namespace WitnessMark.Records;

/// <summary>Several reads of one moment, beside writers and not in their way.</summary>
static class OneMoment
{
    /// <summary>
    /// A deferred transaction: in write-ahead logging it sees the records as they stood at its first read and takes no write
    /// lock, which the usual BEGIN IMMEDIATE would.
    /// </summary>
    public static async Task<IDbContextTransaction?> ReadOneMoment(this RecordsDb db, CancellationToken cancel)
    {
        await db.Database.OpenConnectionAsync(cancel);
        var connection = (SqliteConnection)db.Database.GetDbConnection();
        return await db.Database.UseTransactionAsync(connection.BeginTransaction(deferred: true), cancel);
    }
}
