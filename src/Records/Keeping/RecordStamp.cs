using Microsoft.Data.Sqlite;
using WitnessMark.Stores.Keeping;

namespace WitnessMark.Records;

/// <summary>
/// PRAGMA data_version on a connection that never writes: the number changes when any other connection, also one of another program, has
/// committed (sqlite.org/pragma.html#pragma_data_version). It means nothing beyond its connection, so a random half is set before it.
/// </summary>
sealed class RecordStamp(string connection) : IRecordStamp
{
    readonly string _life = Guid.NewGuid().ToString("N")[..12];
    readonly Lock _one = new();
    SqliteCommand? _ask;

    public string Now()
    {
        lock (_one)
        {
            _ask ??= Ask();
            return $"{_life}-{_ask.ExecuteScalar()}";
        }
    }

    SqliteCommand Ask()
    {
        var open = new SqliteConnection(connection);
        open.Open();
        var ask = open.CreateCommand();
        ask.CommandText = "PRAGMA data_version";
        return ask;
    }
}
