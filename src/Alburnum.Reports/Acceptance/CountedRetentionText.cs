using Alburnum.Reports.Words;
using static Alburnum.Reports.Words.Wording;

namespace Alburnum.Reports.Acceptance;

/// <summary>A laboratory's figures as a retention, in plain lines.</summary>
public static class CountedRetentionText
{
    /// <summary>The contents, where their uncertainty comes from, the steps, and what to mind.</summary>
    public static IEnumerable<string> Lines(CountedRetentionDocument document)
    {
        ArgumentNullException.ThrowIfNull(document);
        yield return Said("assay.counted", ("counted", document.Counted));
        foreach (var content in document.Contents)
            yield return "  "
                + (
                    document.IsBelowDetection
                        ? Said("assay.below", ("limit", $"{Figures.Limit(content.Value)} {content.Unit}"))
                    : content.U is { } u ? Figures.Measured(content.Value, u, content.Unit, most: 4)
                    : $"{Figures.Significant(content.Value)} {content.Unit}"
                );
        if (!document.IsBelowDetection && document.Contents.Any(content => content.U is not null))
            yield return document is { LaboratoryKgPerM3: { } laboratory, DensityKgPerM3: > 0 and var density }
                ? Said(
                    "assay.uncertainty",
                    ("laboratory", Figures.KgPerM3(laboratory)),
                    ("density", Figures.KgPerM3(density))
                )
                : Said("assay.uncertainty-of-laboratory");
        foreach (var step in document.Steps)
            yield return step;
        foreach (var remark in document.Remarks)
            yield return $"· {remark}";
    }
}
