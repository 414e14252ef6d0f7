using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Alburnum.Records.Store.Migrations
{
    /// <inheritdoc />
    public partial class Papers : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "paper",
                columns: table => new
                {
                    RunId = table.Column<long>(type: "INTEGER", nullable: false),
                    FileName = table.Column<string>(type: "TEXT", nullable: false),
                    Bytes = table.Column<byte[]>(type: "BLOB", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_paper", x => new { x.RunId, x.FileName });
                    table.ForeignKey(
                        name: "FK_paper_run_RunId",
                        column: x => x.RunId,
                        principalTable: "run",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "paper");
        }
    }
}
