using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace WitnessMark.Records.Migrations
{
    /// <inheritdoc />
    public partial class FactsOfParts : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<Guid>(
                name: "PartId",
                table: "kept_facts",
                type: "TEXT",
                nullable: true);

            migrationBuilder.CreateIndex(
                name: "IX_kept_facts_PartId_Kind",
                table: "kept_facts",
                columns: new[] { "PartId", "Kind" });
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropIndex(
                name: "IX_kept_facts_PartId_Kind",
                table: "kept_facts");

            migrationBuilder.DropColumn(
                name: "PartId",
                table: "kept_facts");
        }
    }
}
