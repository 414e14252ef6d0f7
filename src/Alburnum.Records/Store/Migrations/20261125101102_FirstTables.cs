using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Alburnum.Records.Store.Migrations
{
    /// <inheritdoc />
    public partial class FirstTables : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "photograph",
                columns: table => new
                {
                    Sha256 = table.Column<string>(type: "TEXT", maxLength: 64, nullable: false),
                    FileName = table.Column<string>(type: "TEXT", nullable: false),
                    Bytes = table.Column<byte[]>(type: "BLOB", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_photograph", x => x.Sha256);
                });

            migrationBuilder.CreateTable(
                name: "run",
                columns: table => new
                {
                    Id = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    Reference = table.Column<string>(type: "TEXT", nullable: false),
                    Title = table.Column<string>(type: "TEXT", nullable: false),
                    Client = table.Column<string>(type: "TEXT", nullable: false),
                    RunAt = table.Column<DateTime>(type: "TEXT", nullable: false),
                    Verdict = table.Column<string>(type: "TEXT", nullable: false),
                    Document = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_run", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "run_photograph",
                columns: table => new
                {
                    PhotographsSha256 = table.Column<string>(type: "TEXT", nullable: false),
                    RunRowId = table.Column<long>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_run_photograph", x => new { x.PhotographsSha256, x.RunRowId });
                    table.ForeignKey(
                        name: "FK_run_photograph_photograph_PhotographsSha256",
                        column: x => x.PhotographsSha256,
                        principalTable: "photograph",
                        principalColumn: "Sha256",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_run_photograph_run_RunRowId",
                        column: x => x.RunRowId,
                        principalTable: "run",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateIndex(
                name: "IX_run_Reference",
                table: "run",
                column: "Reference");

            migrationBuilder.CreateIndex(
                name: "IX_run_photograph_RunRowId",
                table: "run_photograph",
                column: "RunRowId");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "run_photograph");

            migrationBuilder.DropTable(
                name: "photograph");

            migrationBuilder.DropTable(
                name: "run");
        }
    }
}
