using Microsoft.EntityFrameworkCore;

namespace Alburnum.Records.Store;

/// <summary>The tables of the case store. Rows are only ever added: a run is evidence and is not changed afterwards.</summary>
internal sealed class StoreContext(DbContextOptions<StoreContext> options) : DbContext(options)
{
    public DbSet<RunRow> Runs => Set<RunRow>();

    public DbSet<PhotographRow> Photographs => Set<PhotographRow>();

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
