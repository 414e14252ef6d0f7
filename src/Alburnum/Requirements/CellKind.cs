namespace Alburnum.Requirements;

/// <summary>A kind of cell that a code's own tables hold: what they say of one subject, and what they tell cells apart by.</summary>
/// <param name="Subject">The subject.</param>
/// <param name="By">
/// Fields of words that tell its cells apart; every combination of the words that the rows name is a cell. Empty where the code has no more of them than there are rows.
/// </param>
public sealed record CellKind(Subject Subject, IReadOnlyList<Field> By);
