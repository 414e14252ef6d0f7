using System.Text.Json.Serialization;
using Alburnum.Reports.Documents;
using Alburnum.Reports.Words;
using Alburnum.Requirements;
using Alburnum.Workflows.Requirements;

namespace Alburnum.Reports.Requirements;

/// <summary>The cells of a rulebook that are still to be read. Fields as in docs/json/rulebook.md.</summary>
public sealed record WorksheetDocument
{
    /// <summary>The rulebook.</summary>
    public required RulebookDocument Rulebook { get; init; }

    /// <summary>Number of enquiries put to it.</summary>
    public required int Enquiries { get; init; }

    /// <summary>The cells, those asked for most first.</summary>
    public required IReadOnlyList<WorksheetCellDocument> Cells { get; init; }

    /// <summary>The document of cells found.</summary>
    public static WorksheetDocument From(UnreadCells found)
    {
        ArgumentNullException.ThrowIfNull(found);
        var rows = RequirementWords.Current.Rows;
        return new()
        {
            Rulebook = RulebookMapping.From(found.Rulebook),
            Enquiries = found.Enquiries,
            Cells =
            [
                .. found.Cells.Select(cell => new WorksheetCellDocument
                {
                    AskedBy = cell.Enquiries,
                    Key = cell.Key,
                    Subject = cell.Row.Subject,
                    When = rows.When(cell),
                    Now = rows.Now(cell),
                    Standing =
                        cell.Row.Demand is UnknownCell ? null : (cell.Zone?.Provenance ?? cell.Row.Provenance).Standing,
                }),
            ],
        };
    }
}

/// <summary>One cell that is still to be read.</summary>
public sealed record WorksheetCellDocument
{
    /// <summary>How many of the enquiries ask for it.</summary>
    public required int AskedBy { get; init; }

    /// <summary>Key of its row or of its analytical zone, or that of the row to be written.</summary>
    public required string Key { get; init; }

    /// <summary>What it is about.</summary>
    [JsonConverter(typeof(SubjectConverter))]
    public required Subject Subject { get; init; }

    /// <summary>Conditions of the row, in words; of a zone, what names it.</summary>
    public required string When { get; init; }

    /// <summary>What the rulebook says now; null where it says nothing.</summary>
    public required string? Now { get; init; }

    /// <summary>Standing of what it says; null where nothing is known.</summary>
    [JsonConverter(typeof(StandingConverter))]
    public required Standing? Standing { get; init; }
}
