using Alburnum.Acceptance.Variables;
using Alburnum.Penetration;
using Alburnum.Records.Tables;
using Alburnum.Reports.Words;

namespace Alburnum.Cli.Acceptance;

/// <summary>Makes the sheet of a batch judged by variables.</summary>
internal static class VariablesSheet
{
    public static VariablesDocument Of(ValuedPieces valued, VariablesDemand demand, int? lot)
    {
        var judged = VariablesConformity.Judge([.. valued.Pieces.Select(piece => piece.Reading)], demand, lot);
        return new(
            judged.Verdict.InWords(),
            InWords(judged, valued.Measure.Name),
            ReasonWords.English.Variables.Demand(demand),
            valued.Measure.Name,
            demand.Unit,
            demand.Limit,
            demand.Share,
            demand.Confidence,
            demand.Population.InWords(),
            judged.LowerLimit,
            judged.UpperLimit,
            judged.ShareLowerBound,
            judged.ShareUpperBound,
            judged.CountedShareLowerBound,
            judged.IsExact,
            [.. valued.Pieces.Select(piece => new ValuedPiece(piece.Piece, piece.Reading.Value, Cut(piece.Reading)))],
            ReasonWords.English.Say(judged.Reasons)
        );
    }

    private static string InWords(VariablesJudgement judged, string measure) =>
        judged switch
        {
            { LowerLimit: null } => $"The batch is undecided by {measure}: too little was read to fix a spread.",
            { Verdict: Verdict.Undecided } => $"The batch is undecided by {measure}: see the reasons.",
            _ => $"The batch {judged.Verdict.InWords()} by {measure}. Nothing else was judged.",
        };

    private static string? Cut(CensoredReading reading) =>
        reading.Censoring switch
        {
            Censoring.Exact => null,
            Censoring.AtMost => "below",
            Censoring.AtLeast => "above",
            _ => throw new ArgumentOutOfRangeException(nameof(reading), reading, "Not a reading."),
        };
}
