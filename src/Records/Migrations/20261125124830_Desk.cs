using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace WitnessMark.Records.Migrations
{
    /// <inheritdoc />
    public partial class Desk : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "calendar",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Calendar = table.Column<string>(type: "TEXT", nullable: false),
                    Version = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_calendar", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "kept_decisions",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    VehicleId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Kind = table.Column<string>(type: "TEXT", nullable: false),
                    Text = table.Column<string>(type: "TEXT", nullable: false),
                    Version = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_kept_decisions", x => x.Id);
                    table.ForeignKey(
                        name: "FK_kept_decisions_vehicles_VehicleId",
                        column: x => x.VehicleId,
                        principalTable: "vehicles",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "kept_facts",
                columns: table => new
                {
                    Arrival = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    VehicleId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Kind = table.Column<string>(type: "TEXT", nullable: false),
                    Text = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_kept_facts", x => x.Arrival);
                    table.UniqueConstraint("AK_kept_facts_Id", x => x.Id);
                    table.ForeignKey(
                        name: "FK_kept_facts_vehicles_VehicleId",
                        column: x => x.VehicleId,
                        principalTable: "vehicles",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "standing_orders",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    InTurn = table.Column<string>(type: "TEXT", nullable: false),
                    On = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    Version = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_standing_orders", x => x.Id);
                    table.ForeignKey(
                        name: "FK_standing_orders_vehicles_Id",
                        column: x => x.Id,
                        principalTable: "vehicles",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "IX_kept_decisions_VehicleId_Kind",
                table: "kept_decisions",
                columns: new[] { "VehicleId", "Kind" });

            migrationBuilder.CreateIndex(
                name: "IX_kept_facts_VehicleId_Kind",
                table: "kept_facts",
                columns: new[] { "VehicleId", "Kind" });

            // Facts are never altered, not even by a program with a bug: the file itself refuses.
            migrationBuilder.Sql("CREATE TRIGGER kept_facts_no_update BEFORE UPDATE ON kept_facts BEGIN SELECT RAISE(ABORT, 'kept_facts are append-only'); END;");
            migrationBuilder.Sql("CREATE TRIGGER kept_facts_no_delete BEFORE DELETE ON kept_facts BEGIN SELECT RAISE(ABORT, 'kept_facts are append-only'); END;");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "calendar");

            migrationBuilder.DropTable(
                name: "kept_decisions");

            migrationBuilder.DropTable(
                name: "kept_facts");

            migrationBuilder.DropTable(
                name: "standing_orders");
        }
    }
}
