using Alburnum.Acceptance.Variables;
using Alburnum.Reports.Documents;
using Alburnum.Reports.Words;
using Alburnum.Workflows.Acceptance;

namespace Alburnum.Reports.Acceptance;

/// <summary>Writes a verdict by variables down.</summary>
public static class VariablesMapping
{
    /// <summary>The batch as a document.</summary>
    public static VariablesDocument Of(ValuedBatch batch)
    {
        ArgumentNullException.ThrowIfNull(batch);
        var (valued, demand, judged, lotSize) = batch;
        var measure = Wording.Current.Say(valued.Measure);
        return new()
        {
            Findings = FindingsMapping.Of(judged.Findings(demand, lotSize), measure),
            AcceptanceRule = ReasonWords.Current.Variables.Demand(demand),
            Kind = valued.Measure.Kind,
            Measure = measure,
            Unit = demand.Unit,
            Limit = demand.Limit,
            Share = demand.Share,
            Confidence = demand.Confidence,
            Population = demand.Population,
            LowerLimit = judged.LowerLimit,
            UpperLimit = judged.UpperLimit,
            ShareLowerBound = judged.ShareLowerBound,
            ShareUpperBound = judged.ShareUpperBound,
            CountedShareLowerBound = judged.CountedShareLowerBound,
            IsExact = judged.IsExact,
            Pieces =
            [
                .. valued.Pieces.Select(piece => new ValuedPiece
                {
                    Piece = piece.Piece,
                    Value = piece.Reading.Value,
                    CutOff = Cut(piece.Reading),
                }),
            ],
            Reasons = ReasonWords.Current.Say(judged.Reasons),
            Grounds = ReasonMapping.Of(judged.Reasons),
        };
    }

    private static CutOff? Cut(CensoredReading reading) =>
        reading.Censoring switch
        {
            Censoring.Exact => null,
            Censoring.AtMost => CutOff.Below,
            Censoring.AtLeast => CutOff.Above,
            _ => throw new ArgumentOutOfRangeException(nameof(reading), reading, "Not a reading."),
        };
}
