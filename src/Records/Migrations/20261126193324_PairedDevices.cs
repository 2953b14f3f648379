using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace WitnessMark.Records.Migrations
{
    /// <inheritdoc />
    public partial class PairedDevices : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "paired_devices",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Name = table.Column<string>(type: "TEXT", nullable: false),
                    KeyHash = table.Column<string>(type: "TEXT", nullable: false),
                    PairedAt = table.Column<DateTimeOffset>(type: "TEXT", nullable: false),
                    SeenAt = table.Column<DateTimeOffset>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_paired_devices", x => x.Id);
                });

            migrationBuilder.CreateIndex(
                name: "IX_paired_devices_KeyHash",
                table: "paired_devices",
                column: "KeyHash",
                unique: true);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "paired_devices");
        }
    }
}
