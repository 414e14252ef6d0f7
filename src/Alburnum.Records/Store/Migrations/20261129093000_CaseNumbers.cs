using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Alburnum.Records.Store.Migrations
{
    /// <inheritdoc />
    public partial class CaseNumbers : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            // Until now a reference was a case: they are numbered in the order in which each was first run.
            migrationBuilder.Sql(
                """
                ALTER TABLE run ADD COLUMN CaseNumber INTEGER NOT NULL DEFAULT 0;
                UPDATE run SET CaseNumber = (
                    SELECT COUNT(*) FROM (SELECT MIN(Id) AS FirstId FROM run GROUP BY Reference) AS firsts
                    WHERE firsts.FirstId <= (SELECT MIN(own.Id) FROM run AS own WHERE own.Reference = run.Reference)
                );
                CREATE INDEX IX_run_CaseNumber ON run (CaseNumber);
                """
            );
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder) =>
            throw new System.NotSupportedException("An earlier version cannot tell cases of one reference apart; the copy can be used.");
    }
}
