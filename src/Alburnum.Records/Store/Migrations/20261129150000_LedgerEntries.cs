using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Alburnum.Records.Store.Migrations
{
    /// <inheritdoc />
    public partial class LedgerEntries : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            // The first entries are made just after, see BringingForward.
            migrationBuilder.CreateTable(
                name: "ledger",
                columns: table => new
                {
                    Number = table.Column<int>(type: "INTEGER", nullable: false),
                    CaseNumber = table.Column<int>(type: "INTEGER", nullable: false),
                    Sealed = table.Column<string>(type: "TEXT", nullable: false),
                    Opened = table.Column<string>(type: "TEXT", nullable: false),
                    Hash = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table => table.PrimaryKey("PK_ledger", x => x.Number));

            migrationBuilder.CreateIndex(name: "IX_ledger_CaseNumber", table: "ledger", column: "CaseNumber");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder) =>
            throw new System.NotSupportedException("An earlier version would keep runs without entering them; the copy can be used.");
    }
}
