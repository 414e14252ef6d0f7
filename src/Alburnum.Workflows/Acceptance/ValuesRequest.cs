using Alburnum.Acceptance.History;
using Alburnum.Acceptance.Variables;
using Alburnum.Facts;
using Alburnum.Records.Tables;

namespace Alburnum.Workflows.Acceptance;

/// <summary>What a batch is judged by where a value was measured on each piece.</summary>
public sealed record ValuesRequest
{
    /// <summary>Pieces in the batch, at least those measured; null where not known.</summary>
    public int? Lot { get; init; }

    /// <summary>Required retention, kg/m³, where retentions were measured.</summary>
    public double? RequiredKgPerM3 { get; init; }

    /// <summary>Required depth, mm, where depths were measured.</summary>
    public double? LeastDepthMm { get; init; }

    /// <summary>Share of all pieces that must reach it, 0.5 to 1 (both excluded).</summary>
    public required double Share { get; init; }

    /// <summary>One-sided confidence with which that must be shown.</summary>
    public double Confidence { get; init; } = 0.95;

    /// <summary>Shape that the values are taken to have; null: log-normal for retentions, normal for depths.</summary>
    public Population? Population { get; init; }

    /// <summary>What a field is called where it was written, for messages.</summary>
    public required Func<JudgingField, string> NameOf { get; init; }

    /// <summary>What is asked of the pieces measured.</summary>
    /// <exception cref="InputRefusedException">The lot is smaller than the pieces measured, or the limit is not that of what was measured.</exception>
    internal VariablesDemand Demand(ValuedPieces valued)
    {
        if (Lot < valued.Pieces.Count)
            throw Refused(JudgingField.Lot, $"{Lot}", $"at least the {valued.Pieces.Count} pieces that were measured");
        var isRetention = valued.Measure.Kind == MeasureKind.Retention;
        var (wanted, limit, range) = isRetention
            ? (JudgingField.Required, RequiredKgPerM3, Ranges.RetentionKgPerM3)
            : (JudgingField.LeastDepth, LeastDepthMm, Ranges.DepthMm);
        var (unwanted, other) = isRetention
            ? (JudgingField.LeastDepth, LeastDepthMm)
            : (JudgingField.Required, RequiredKgPerM3);
        if (other is not null)
            throw Refused(
                unwanted,
                "a value",
                $"no such option for {valued.Measure.Name}, which takes {NameOf(wanted)}"
            );
        return new(
            limit ?? throw Refused(wanted, "nothing", $"a number, {range.InWords}"),
            valued.Measure.Unit,
            Share,
            Confidence,
            Population
                ?? (
                    isRetention
                        ? Alburnum.Acceptance.Variables.Population.LogNormal
                        : Alburnum.Acceptance.Variables.Population.Normal
                )
        );
    }

    private InputRefusedException Refused(JudgingField field, string found, string expected) =>
        new(new InputProblem(NameOf(field), 0, "", "", found, expected));
}
