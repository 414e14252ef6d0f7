namespace Alburnum.Acceptance.Indexed;

/// <summary>Why a lot does not fit the rules.</summary>
public abstract record LotMisfit
{
    private protected LotMisfit() { }
}

/// <summary>The lot is smaller than the tables know.</summary>
/// <param name="Pieces">Pieces in the lot.</param>
/// <param name="Least">Pieces of the smallest lot of the tables.</param>
public sealed record LotTooSmall(int Pieces, int Least) : LotMisfit;

/// <summary>Acceptance has stopped before this lot, which does not begin it again.</summary>
public sealed record AcceptanceStopped : LotMisfit;

/// <summary>The lot begins acceptance again, which had not stopped.</summary>
public sealed record AcceptanceNotStopped : LotMisfit;

/// <summary>Another number of pieces was cut than the plan in force asks for.</summary>
/// <param name="Cut">Pieces cut.</param>
/// <param name="Plan">The plan in force.</param>
public sealed record OtherSampleCut(int Cut, IndexedPlan Plan) : LotMisfit;

/// <summary>More pieces failed than were cut.</summary>
/// <param name="Failures">Pieces that failed.</param>
/// <param name="Cut">Pieces cut.</param>
public sealed record MoreFailuresThanCut(int Failures, int Cut) : LotMisfit;
