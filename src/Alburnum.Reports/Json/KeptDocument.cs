using System.Text.Json;
using Alburnum.Records.Store;
using Alburnum.Reports.Documents;

namespace Alburnum.Reports.Json;

/// <summary>Results as they were kept, perhaps by another version.</summary>
public static class KeptDocument
{
    /// <summary>The result that a run holds.</summary>
    /// <exception cref="InputRefusedException">It is damaged, or written by a version whose results this one cannot read.</exception>
    public static CaseDocument Of(KeptRun run)
    {
        ArgumentNullException.ThrowIfNull(run);
        return OrNull(run.Document)
            ?? throw new InputRefusedException(
                new InputProblem(
                    "case store",
                    0,
                    $"run {run.Number}",
                    "document",
                    "a result that this version cannot read",
                    "one that was kept by this version or an earlier one"
                )
            );
    }

    /// <summary>A result as it was kept; null where this version cannot read it.</summary>
    /// <param name="document">The result as JSON.</param>
    public static CaseDocument? OrNull(string document)
    {
        try
        {
            return DocumentJson.Read<CaseDocument>(document);
        }
        catch (Exception unreadable) when (unreadable is JsonException or NotSupportedException)
        {
            return null;
        }
    }
}
