using Alburnum.Acceptance.History;
using Alburnum.Acceptance.Variables;
using Alburnum.Records.Charges;
using Alburnum.Records.Facts;
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

    /// <summary>What is asked of the pieces measured.</summary>
    /// <exception cref="InputRefusedException">The lot is smaller than the pieces measured, or the limit is not that of what was measured.</exception>
    internal VariablesDemand Demand(ValuedPieces valued)
    {
        if (Lot < valued.Pieces.Count)
            throw AcceptanceFields.Lot.Refused(
                file: null,
                $"{Lot}",
                $"at least the {valued.Pieces.Count} pieces that were measured"
            );
        var isRetention = valued.Measure.Kind == MeasureKind.Retention;
        var (wanted, limit) = isRetention
            ? (TreatmentFields.Retention, RequiredKgPerM3)
            : (TreatmentFields.Depth, LeastDepthMm);
        var (unwanted, other) = isRetention
            ? (TreatmentFields.Depth, LeastDepthMm)
            : (TreatmentFields.Retention, RequiredKgPerM3);
        if (other is not null)
            throw unwanted.Refused(
                file: null,
                "a value",
                $"no such option for {valued.Measure.Name}, which takes {wanted.Option}"
            );
        return new(
            limit ?? throw wanted.Refused(file: null, "nothing", $"a number, {wanted.Expected}"),
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
}
