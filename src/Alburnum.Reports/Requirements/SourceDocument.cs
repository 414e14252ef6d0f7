using Alburnum.Records.Facts;

namespace Alburnum.Reports.Requirements;

/// <summary>A document that facts are taken from. Fields as in docs/json/sources.md.</summary>
public sealed record SourceDocument
{
    /// <summary>Rows of the data name it by this.</summary>
    public required string Id { get; init; }

    /// <summary>Title or number.</summary>
    public required string Document { get; init; }

    /// <summary>Who published it; null where that is not known.</summary>
    public required string? Publisher { get; init; }

    /// <summary>Year that it was published; null where that is not known.</summary>
    public required string? Year { get; init; }

    /// <summary>Edition; null where it has none.</summary>
    public required string? Edition { get; init; }

    /// <summary>Table, clause or page; null where none is named.</summary>
    public required string? Place { get; init; }

    /// <summary>Where it can be read; null where that is not said.</summary>
    public required string? Address { get; init; }

    /// <summary>When it was read; null where it was not.</summary>
    public required string? DateRead { get; init; }

    /// <summary>How it was read.</summary>
    public required string HowRead { get; init; }

    /// <summary>What a reader should know of it; null where nothing.</summary>
    public required string? Note { get; init; }

    /// <summary>The document of a source.</summary>
    public static SourceDocument From(Source source)
    {
        ArgumentNullException.ThrowIfNull(source);
        return new()
        {
            Id = source.Id,
            Document = source.Document,
            Publisher = Known(source.Publisher),
            Year = Known(source.Year),
            Edition = Known(source.Edition),
            Place = Known(source.Place),
            Address = Known(source.Address),
            DateRead = Known(source.DateRead),
            HowRead = source.HowRead,
            Note = Known(source.Note),
        };

        static string? Known(string text) => text.Length > 0 ? text : null;
    }
}
