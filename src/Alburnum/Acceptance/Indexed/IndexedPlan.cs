namespace Alburnum.Acceptance.Indexed;

/// <summary>A plan as found in a standard's tables.</summary>
/// <param name="Plan">Pieces to cut, acceptance and rejection number.</param>
/// <param name="LotSize">Pieces in the lot.</param>
/// <param name="Level">Inspection level.</param>
/// <param name="AqlPercent">AQL that indexes the plan.</param>
/// <param name="Severity">Normal, tightened or reduced.</param>
/// <param name="CodeLetter">Letter that the lot size calls for.</param>
/// <param name="UsedLetter">Letter of the row used, arrows followed.</param>
/// <param name="IsEveryPieceInspected">True where the table's sample is as large as the lot or larger.</param>
/// <param name="Source">The standard.</param>
public sealed record IndexedPlan(
    SingleSamplingPlan Plan,
    int LotSize,
    InspectionLevel Level,
    double AqlPercent,
    Severity Severity,
    char CodeLetter,
    char UsedLetter,
    bool IsEveryPieceInspected,
    Provenance Source
)
{
    /// <summary>Greatest AQL that is a per cent of failing pieces; above it the tables mean defects per hundred pieces.</summary>
    public const double GreatestPercentAql = 10;

    /// <summary>True where the standard counts defects, several of them possible on one piece.</summary>
    public bool CountsDefects => AqlPercent > GreatestPercentAql;

    /// <summary>What the standard takes the failures of this plan to be drawn from.</summary>
    public Supply StandardSupply => CountsDefects ? new DefectsPerPiece() : new SteadyProcess();

    /// <summary>What a count of failures means.</summary>
    /// <param name="failures">Failures found, 0 to the sample size; defects where the plan counts those.</param>
    public LotOutcome Outcome(int failures)
    {
        Require.InRange(failures, 0, CountsDefects ? int.MaxValue : Plan.SampleSize, "failures");
        if (failures <= Plan.AcceptanceNumber)
            return LotOutcome.Accepted;
        return failures < Plan.RejectionNumber ? LotOutcome.AcceptedInGap : LotOutcome.Rejected;
    }
}

/// <summary>A single sampling plan as indexed in a standard's tables.</summary>
/// <param name="Indexed">The plan with standard, level, AQL and severity.</param>
public sealed record IndexedSampling(IndexedPlan Indexed) : AcceptanceRule
{
    /// <inheritdoc/>
    public override int? PiecesAsked => Indexed.Plan.SampleSize;

    /// <inheritdoc/>
    // Defects per hundred pieces are no share of pieces.
    public override WantedShare? Wanted =>
        Indexed.CountsDefects ? null : new(1 - Indexed.AqlPercent / 100, WantedBy.Aql);

    /// <inheritdoc/>
    public override int MayFail(int piecesCut) => Indexed.Plan.AcceptanceNumber;
}

/// <summary>What became of a lot.</summary>
public enum LotOutcome
{
    /// <summary>Accepted.</summary>
    Accepted,

    /// <summary>Accepted with a count between the acceptance and the rejection number: ends reduced inspection.</summary>
    AcceptedInGap,

    /// <summary>Not accepted.</summary>
    Rejected,
}
