using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace WitnessMark.Records.Migrations
{
    /// <summary>
    /// Facts are never altered, not even by a program with a bug: the file itself refuses. A later migration that rebuilds
    /// one of these tables drops its triggers and must make them again.
    /// </summary>
    public partial class AppendOnly : Migration
    {
        static readonly string[] Facts = ["readings", "withdrawals"];

        protected override void Up(MigrationBuilder migrationBuilder)
        {
            foreach (var table in Facts)
            {
                migrationBuilder.Sql($"CREATE TRIGGER {table}_no_update BEFORE UPDATE ON {table} BEGIN SELECT RAISE(ABORT, '{table} are append-only'); END;");
                migrationBuilder.Sql($"CREATE TRIGGER {table}_no_delete BEFORE DELETE ON {table} BEGIN SELECT RAISE(ABORT, '{table} are append-only'); END;");
            }
        }

        protected override void Down(MigrationBuilder migrationBuilder)
        {
            foreach (var table in Facts)
            {
                migrationBuilder.Sql($"DROP TRIGGER {table}_no_update;");
                migrationBuilder.Sql($"DROP TRIGGER {table}_no_delete;");
            }
        }
    }
}
