namespace Alburnum.Cli.Acceptance;

/// <summary>A plant's lots under the switching rules. Fields as in docs/json/history.md.</summary>
/// <param name="Standard">The standard of plans and rules.</param>
/// <param name="SwitchingStanding">How far the switching rules may be relied on.</param>
/// <param name="Level">Inspection level.</param>
/// <param name="Aql">AQL.</param>
/// <param name="Lots">Each lot, oldest first.</param>
/// <param name="Next">Inspection of the next lot: normal, tightened, reduced, or stopped.</param>
/// <param name="InWords">Where the plant stands, in words.</param>
internal sealed record LotsDocument(
    string Standard,
    string SwitchingStanding,
    string Level,
    double Aql,
    IReadOnlyList<LotEntry> Lots,
    string Next,
    string InWords
);

/// <summary>One lot.</summary>
/// <param name="Lot">Number of the lot.</param>
/// <param name="Pieces">Pieces in it.</param>
/// <param name="Severity">Inspection in force for it.</param>
/// <param name="Letter">Letter of the plan used.</param>
/// <param name="Cut">Pieces cut.</param>
/// <param name="MayFail">Acceptance number.</param>
/// <param name="Failures">Failures found.</param>
/// <param name="Outcome">accepted, accepted in the gap, not accepted.</param>
/// <param name="Next">Inspection after it.</param>
/// <param name="Because">Why inspection was switched with it; absent where it was not.</param>
internal sealed record LotEntry(
    string Lot,
    int Pieces,
    string Severity,
    char Letter,
    int Cut,
    int MayFail,
    int Failures,
    string Outcome,
    string Next,
    string? Because
);
