using Alburnum.Requirements;

namespace Alburnum.Reports.Words;

/// <summary>What a check of a rulebook found, in words.</summary>
/// <param name="wording">The language.</param>
/// <param name="rows">How rows are said.</param>
public sealed class RulebookCheckWords(Wording wording, RowWords rows)
{
    /// <summary>What was found, for instance "gap".</summary>
    public string Say(RulebookFindingKind kind) =>
        kind switch
        {
            RulebookFindingKind.Contradiction => wording.Say("rulebooks.kind.contradiction"),
            RulebookFindingKind.AsksLess => wording.Say("rulebooks.kind.asks-less"),
            RulebookFindingKind.Unreachable => wording.Say("rulebooks.kind.unreachable"),
            RulebookFindingKind.Gap => wording.Say("rulebooks.kind.gap"),
            RulebookFindingKind.Silent => wording.Say("rulebooks.kind.silent"),
            RulebookFindingKind.Overlap => wording.Say("rulebooks.kind.overlap"),
            RulebookFindingKind.TooLarge => wording.Say("rulebooks.kind.too-large"),
            _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Not a kind."),
        };

    /// <summary>The finding in one sentence.</summary>
    public string Say(RulebookFinding finding) =>
        finding switch
        {
            ContradictionFound clash => wording.Say("rulebooks.contradiction", ("rows", Rows(clash))),
            OverlapFound overlap => wording.Say("rulebooks.overlap", ("rows", Rows(overlap))),
            LessAskedFound less => Wording.Capital(
                wording.Say(
                    "rulebooks.asks-less",
                    ("field", rows.Say(less.Field)),
                    ("harsh", rows.Say(less.Harsh.Value)),
                    ("harshRow", less.Harsh.Row.Key),
                    ("harshDemand", rows.Say(less.Harsh.Row.Demand)),
                    ("mild", rows.Say(less.Mild.Value)),
                    ("mildRow", less.Mild.Row.Key),
                    ("mildDemand", rows.Say(less.Mild.Row.Demand))
                )
            ),
            UnreachableFound unreachable => wording.Say("rulebooks.unreachable", ("row", unreachable.Row.Key)),
            GapFound => wording.Say("rulebooks.gap"),
            SilenceFound => wording.Say("rulebooks.silence"),
            TooLargeToCheck large => wording.Say(
                "rulebooks.too-large",
                ("combinations", Figures.Number(large.Combinations, 0)),
                ("most", Figures.Number(large.CombinationsMax, 0))
            ),
            _ => throw new ArgumentOutOfRangeException(nameof(finding), finding, "Not a finding."),
        };

    private string Rows(RulebookFinding finding) =>
        wording.Joined(
            "rulebooks.rows",
            finding.Rows.Select(row => wording.Say("rulebooks.row", ("row", row.Key), ("demand", rows.Say(row.Demand))))
        );
}
