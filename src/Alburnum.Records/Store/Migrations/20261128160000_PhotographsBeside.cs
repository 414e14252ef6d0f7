using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Alburnum.Records.Store.Migrations
{
    /// <inheritdoc />
    public partial class PhotographsBeside : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            // The bytes were written to files just before, see BringingForward. Dropped by SQLite itself: the migrator would
            // make the table anew, which cannot be done in one transaction with the rest.
            migrationBuilder.Sql("ALTER TABLE photograph DROP COLUMN Bytes;");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder) =>
            throw new System.NotSupportedException("Photographs do not go back into the database; the copy has them.");
    }
}
