using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace WitnessMark.Records.Migrations
{
    /// <inheritdoc />
    public partial class FoldedParts : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "folded_parts",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Text = table.Column<string>(type: "TEXT", nullable: true),
                    Version = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_folded_parts", x => x.Id);
                    table.ForeignKey(
                        name: "FK_folded_parts_samples_Id",
                        column: x => x.Id,
                        principalTable: "samples",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "folded_parts");
        }
    }
}
