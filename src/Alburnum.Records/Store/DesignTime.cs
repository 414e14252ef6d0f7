using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Design;

namespace Alburnum.Records.Store;

/// <summary>Lets the migration tool see the tables without a store at hand.</summary>
internal sealed class DesignTime : IDesignTimeDbContextFactory<StoreContext>
{
    public StoreContext CreateDbContext(string[] args) =>
        new(new DbContextOptionsBuilder<StoreContext>().UseSqlite("Data Source=design.db").Options);
}
