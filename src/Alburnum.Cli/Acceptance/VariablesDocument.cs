namespace Alburnum.Cli.Acceptance;

/// <summary>A batch verdict by variables with its reasons. Fields as in docs/json/judge.md.</summary>
/// <param name="Verdict">conforms, does not conform or undecided.</param>
/// <param name="InWords">The whole in one sentence.</param>
/// <param name="Rule">What was asked, in words.</param>
/// <param name="Measure">What was measured.</param>
/// <param name="Unit">Its unit.</param>
/// <param name="Limit">Least value that conforms.</param>
/// <param name="Share">Share of all pieces that must reach it.</param>
/// <param name="Confidence">One-sided confidence.</param>
/// <param name="Population">normal or log-normal.</param>
/// <param name="LowerLimit">The share exceeds at least this, with the confidence; absent where nothing fixes the spread.</param>
/// <param name="UpperLimit">The share exceeds at most this, with the same confidence; absent likewise.</param>
/// <param name="ShareLowerBound">Lower bound on the share that reaches the limit; absent where readings are cut off.</param>
/// <param name="ShareUpperBound">Upper bound on it.</param>
/// <param name="CountedShareLowerBound">Exact bound from counting alone.</param>
/// <param name="IsExact">False where readings are cut off and the limits approximate.</param>
/// <param name="Pieces">Each piece with its value.</param>
/// <param name="Reasons">Why, one sentence each.</param>
internal sealed record VariablesDocument(
    string Verdict,
    string InWords,
    string Rule,
    string Measure,
    string Unit,
    double Limit,
    double Share,
    double Confidence,
    string Population,
    double? LowerLimit,
    double? UpperLimit,
    double? ShareLowerBound,
    double? ShareUpperBound,
    double CountedShareLowerBound,
    bool IsExact,
    IReadOnlyList<ValuedPiece> Pieces,
    IReadOnlyList<string> Reasons
);

/// <summary>One piece with its value.</summary>
/// <param name="Piece">Number of the piece.</param>
/// <param name="Value">The value, or where it was cut off.</param>
/// <param name="CutOff">below, above; absent where the value was read.</param>
internal sealed record ValuedPiece(string Piece, double Value, string? CutOff);
