using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace WitnessMark.Records.Migrations
{
    /// <summary>
    /// Assemblies between system and part; jobs that belong to a vehicle and say their own hours, cost, needs and waits. A job
    /// kept before was always the making of a part from its card: what it now says follows from that card, and work sent out
    /// waits behind it.
    /// </summary>
    public partial class AssembliesAndPlan : Migration
    {
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "assemblies",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    SystemId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Name = table.Column<string>(type: "TEXT", nullable: false),
                    Order = table.Column<int>(type: "INTEGER", nullable: false),
                    Version = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_assemblies", x => x.Id);
                    table.ForeignKey(
                        name: "FK_assemblies_systems_SystemId",
                        column: x => x.SystemId,
                        principalTable: "systems",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            // Added so and not by a rebuild of the table: SQLite takes a new column with a reference when it begins empty.
            migrationBuilder.Sql("ALTER TABLE parts ADD COLUMN AssemblyId TEXT NULL CONSTRAINT FK_parts_assemblies_AssemblyId REFERENCES assemblies (Id) ON DELETE RESTRICT;");
            migrationBuilder.CreateIndex(name: "IX_parts_AssemblyId", table: "parts", column: "AssemblyId");
            migrationBuilder.CreateIndex(name: "IX_assemblies_SystemId", table: "assemblies", column: "SystemId");

            migrationBuilder.CreateTable(
                name: "milestones",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    VehicleId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Name = table.Column<string>(type: "TEXT", nullable: false),
                    Jobs = table.Column<string>(type: "TEXT", nullable: false),
                    Weight = table.Column<double>(type: "REAL", nullable: false),
                    Wanted = table.Column<DateOnly>(type: "TEXT", nullable: true),
                    Version = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_milestones", x => x.Id);
                    table.ForeignKey(
                        name: "FK_milestones_vehicles_VehicleId",
                        column: x => x.VehicleId,
                        principalTable: "vehicles",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });
            migrationBuilder.CreateIndex(name: "IX_milestones_VehicleId", table: "milestones", column: "VehicleId");

            migrationBuilder.CreateTable(
                name: "means",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Bays = table.Column<int>(type: "INTEGER", nullable: false),
                    Benches = table.Column<int>(type: "INTEGER", nullable: false),
                    Purse = table.Column<string>(type: "TEXT", nullable: false),
                    Version = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_means", x => x.Id);
                    table.ForeignKey(
                        name: "FK_means_vehicles_Id",
                        column: x => x.Id,
                        principalTable: "vehicles",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            // No table refers to jobs, so the old one may go once its rows are carried over; all in the migration's transaction.
            migrationBuilder.DropIndex(name: "IX_jobs_PartId", table: "jobs");
            migrationBuilder.RenameTable(name: "jobs", newName: "jobs_before");
            CreateJobs(migrationBuilder);
            migrationBuilder.Sql(CarryOver);
            migrationBuilder.DropTable(name: "jobs_before");
        }

        static void CreateJobs(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "jobs",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    VehicleId = table.Column<Guid>(type: "TEXT", nullable: false),
                    SystemId = table.Column<Guid>(type: "TEXT", nullable: true),
                    PartId = table.Column<Guid>(type: "TEXT", nullable: true),
                    Title = table.Column<string>(type: "TEXT", nullable: false),
                    Kind = table.Column<string>(type: "TEXT", nullable: false),
                    State = table.Column<string>(type: "TEXT", nullable: false),
                    Hours = table.Column<string>(type: "TEXT", nullable: false),
                    Cost = table.Column<string>(type: "TEXT", nullable: false),
                    Needs = table.Column<string>(type: "TEXT", nullable: false),
                    Leads = table.Column<string>(type: "TEXT", nullable: false),
                    After = table.Column<string>(type: "TEXT", nullable: false),
                    MayFind = table.Column<string>(type: "TEXT", nullable: false),
                    Card = table.Column<string>(type: "TEXT", nullable: true),
                    Version = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_jobs", x => x.Id);
                    table.ForeignKey("FK_jobs_vehicles_VehicleId", x => x.VehicleId, "vehicles", "Id", onDelete: ReferentialAction.Restrict);
                    table.ForeignKey("FK_jobs_systems_SystemId", x => x.SystemId, "systems", "Id", onDelete: ReferentialAction.Restrict);
                    table.ForeignKey("FK_jobs_parts_PartId", x => x.PartId, "parts", "Id", onDelete: ReferentialAction.Restrict);
                });
            migrationBuilder.CreateIndex(name: "IX_jobs_VehicleId", table: "jobs", column: "VehicleId");
            migrationBuilder.CreateIndex(name: "IX_jobs_SystemId", table: "jobs", column: "SystemId");
            migrationBuilder.CreateIndex(name: "IX_jobs_PartId", table: "jobs", column: "PartId");
        }

        /// <summary>Money is summed to the hundredth, as cards give it.</summary>
        const string CarryOver = """
            INSERT INTO jobs (Id, VehicleId, SystemId, PartId, Title, Kind, State, Hours, Cost, Needs, Leads, After, MayFind, Card, Version)
            SELECT j.Id, s.VehicleId, p.SystemId, j.PartId, j.Title, 'Make', j.State,
                (SELECT json_object(
                    'Low', total(json_extract(value, '$.Hours.Low')),
                    'Likely', total(json_extract(value, '$.Hours.Likely')),
                    'High', total(json_extract(value, '$.Hours.High')))
                    FROM json_each(j.Card, '$.Steps')),
                (SELECT json_object(
                    'Low', round(total(json_extract(value, '$.Cost.Low')), 2),
                    'Likely', round(total(json_extract(value, '$.Cost.Likely')), 2),
                    'High', round(total(json_extract(value, '$.Cost.High')), 2),
                    'Currency', json_extract(j.Card, '$.Steps[0].Cost.Currency'))
                    FROM (SELECT value FROM json_each(j.Card, '$.Stock') UNION ALL SELECT value FROM json_each(j.Card, '$.Steps'))),
                '{"Place":"Bench","Helper":false,"DryDay":false,"Daylight":false,"Noisy":false}',
                (SELECT json_group_array(json_object(
                    'Words', json_extract(value, '$.Title'),
                    'Side', 'Behind',
                    'Days', json_object(
                        'Low', json_extract(value, '$.SentOut.LeadDays.Low'),
                        'Likely', json_extract(value, '$.SentOut.LeadDays.Likely'),
                        'High', json_extract(value, '$.SentOut.LeadDays.High')),
                    'Price', json_object('Low', 0, 'Likely', 0, 'High', 0, 'Currency', json_extract(value, '$.Cost.Currency')),
                    'Deposit', 0,
                    'Ordered', NULL,
                    'Here', json(CASE j.State WHEN 'Done' THEN 'true' ELSE 'false' END)))
                    FROM json_each(j.Card, '$.Steps') WHERE json_type(value, '$.SentOut') = 'object'),
                '[]', '[]', j.Card, j.Version
            FROM jobs_before j JOIN parts p ON p.Id = j.PartId JOIN systems s ON s.Id = p.SystemId;
            """;

        /// <summary>Jobs without a card or a part have no place in the tables of before, and go.</summary>
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.Sql("""
                CREATE TABLE jobs_before (Id TEXT NOT NULL CONSTRAINT PK_jobs PRIMARY KEY, PartId TEXT NOT NULL, Title TEXT NOT NULL,
                    State TEXT NOT NULL, Card TEXT NOT NULL, Version INTEGER NOT NULL,
                    CONSTRAINT FK_jobs_parts_PartId FOREIGN KEY (PartId) REFERENCES parts (Id) ON DELETE RESTRICT);
                INSERT INTO jobs_before SELECT Id, PartId, Title, State, Card, Version FROM jobs WHERE PartId IS NOT NULL AND Card IS NOT NULL;
                """);
            migrationBuilder.DropTable(name: "jobs");
            migrationBuilder.RenameTable(name: "jobs_before", newName: "jobs");
            migrationBuilder.CreateIndex(name: "IX_jobs_PartId", table: "jobs", column: "PartId");
            migrationBuilder.DropTable(name: "means");
            migrationBuilder.DropTable(name: "milestones");
            migrationBuilder.DropIndex(name: "IX_parts_AssemblyId", table: "parts");
            migrationBuilder.Sql("ALTER TABLE parts DROP COLUMN AssemblyId;");
            migrationBuilder.DropTable(name: "assemblies");
        }
    }
}
