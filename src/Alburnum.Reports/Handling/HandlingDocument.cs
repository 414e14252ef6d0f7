namespace Alburnum.Reports.Handling;

/// <summary>What is known of a question about treated timber. Fields as in docs/json/handling.md.</summary>
public sealed record HandlingDocument
{
    /// <summary>The question.</summary>
    public required string Question { get; init; }

    /// <summary>The preservative; null where it was not said.</summary>
    public required string? Preservative { get; init; }

    /// <summary>Use classes; empty where they were not said.</summary>
    public required IReadOnlyList<string> UseClasses { get; init; }

    /// <summary>Whose law governs; null where it was not said.</summary>
    public required string? Place { get; init; }

    /// <summary>What is known.</summary>
    public required IReadOnlyList<StatementDocument> Answers { get; init; }

    /// <summary>What would narrow it down, and what governs, one sentence each.</summary>
    public required IReadOnlyList<string> Remarks { get; init; }
}
