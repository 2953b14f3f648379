using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Design;

namespace WitnessMark.Records;

/// <summary>Lets the migrations tool see the model; opens nothing.</summary>
sealed class DesignTime : IDesignTimeDbContextFactory<RecordsDb>
{
    public RecordsDb CreateDbContext(string[] args) =>
        new(new DbContextOptionsBuilder<RecordsDb>().UseSqlite("Data Source=:memory:").Options);
}
