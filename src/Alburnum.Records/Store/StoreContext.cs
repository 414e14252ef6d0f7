using Microsoft.EntityFrameworkCore;

namespace Alburnum.Records.Store;

/// <summary>The tables of the case store. Rows are only ever added: a run is evidence and is not changed afterwards, unless personal data are removed.</summary>
internal sealed class StoreContext(DbContextOptions<StoreContext> options) : DbContext(options)
{
    public DbSet<RunRow> Runs => Set<RunRow>();

    public DbSet<PhotographRow> Photographs => Set<PhotographRow>();

    public DbSet<LedgerRow> Ledger => Set<LedgerRow>();

    protected override void OnModelCreating(ModelBuilder modelBuilder)
    {
        modelBuilder.Entity<RunRow>(run =>
        {
            run.ToTable("run");
            run.HasKey(row => row.Id);
            run.HasIndex(row => row.Reference);
            run.HasIndex(row => row.CaseNumber);
            run.HasMany(row => row.Photographs).WithMany().UsingEntity("run_photograph");
            run.HasMany(row => row.Papers).WithOne().HasForeignKey(paper => paper.RunId);
        });
        modelBuilder.Entity<PaperRow>(paper =>
        {
            paper.ToTable("paper");
            paper.HasKey(row => new { row.RunId, row.FileName });
        });
        modelBuilder.Entity<LedgerRow>(entry =>
        {
            entry.ToTable("ledger");
            entry.HasKey(row => row.Number);
            entry.Property(row => row.Number).ValueGeneratedNever();
            entry.HasIndex(row => row.CaseNumber);
        });
        modelBuilder.Entity<PhotographRow>(photograph =>
        {
            photograph.ToTable("photograph");
            photograph.HasKey(row => row.Sha256);
            photograph.Property(row => row.Sha256).HasMaxLength(64);
        });
    }
}

/// <summary>One run of a case.</summary>
internal sealed class RunRow
{
    public long Id { get; init; }

    public required int CaseNumber { get; init; }

    public required string Reference { get; init; }

    public required string Title { get; init; }

    public required string Client { get; init; }

    public required DateTime RunAt { get; init; }

    public required string Verdict { get; init; }

    public required string Document { get; init; }

    public List<PhotographRow> Photographs { get; init; } = [];

    public List<PaperRow> Papers { get; init; } = [];
}

/// <summary>An entry of the ledger, see docs/decisions/0022.</summary>
internal sealed class LedgerRow
{
    public required int Number { get; init; }

    public required int CaseNumber { get; init; }

    public required string Sealed { get; init; }

    /// <summary>The one thing that is ever changed: a redaction removes texts.</summary>
    public required string Opened { get; set; }

    public required string Hash { get; init; }
}

/// <summary>A written file that a run was read from.</summary>
internal sealed class PaperRow
{
    public long RunId { get; init; }

    public required string FileName { get; init; }

    public required byte[] Bytes { get; init; }
}

/// <summary>A photograph, kept once however many runs rest on it; its bytes are in a file beside the store.</summary>
internal sealed class PhotographRow
{
    public required string Sha256 { get; init; }

    public required string FileName { get; init; }
}
