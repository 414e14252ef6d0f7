using System.Globalization;
using Alburnum.Acceptance.Indexed;
using Alburnum.Records.Facts;
using Alburnum.Workflows.Acceptance;
using static Alburnum.Reports.Words.Figures;

namespace Alburnum.Reports.Words;

/// <summary>How a scheme of switched plans behaves, in words.</summary>
/// <param name="wording">The language.</param>
public sealed class SchemeWords(Wording wording)
{
    /// <summary>In the language chosen.</summary>
    public static SchemeWords Current => new(Wording.Current);

    /// <summary>Headings of the characteristic, left to right.</summary>
    public IReadOnlyList<string> Headings =>
        [
            wording.Say("scheme.failing"),
            wording.Say("scheme.accepted"),
            wording.Say("scheme.normal-alone"),
            wording.Say("scheme.mean-pieces"),
            wording.Say("scheme.normal"),
            wording.Say("scheme.tightened"),
            wording.Say("scheme.reduced"),
            wording.Say("scheme.lots-to-stop"),
        ];

    /// <summary>What the scheme is.</summary>
    /// <param name="standard">The standard.</param>
    /// <param name="aqlPercent">The AQL, %.</param>
    /// <param name="level">Inspection level.</param>
    /// <param name="pieces">Pieces in each lot.</param>
    public string Title(string standard, double aqlPercent, InspectionLevel level, int pieces) =>
        wording.Say(
            "scheme.title",
            ("standard", standard),
            ("aql", Digits(aqlPercent, 6)),
            ("level", level.Key()),
            ("lot", Whole(pieces))
        );

    /// <summary>One of its plans.</summary>
    /// <param name="severity">When it is in force.</param>
    /// <param name="cut">Pieces to cut.</param>
    /// <param name="mayFail">Failures that pass.</param>
    /// <param name="rejectedFrom">Failures from which on the lot is rejected.</param>
    public string Plan(Severity severity, int cut, int mayFail, int rejectedFrom) =>
        wording.Say(
            "scheme.plan",
            ("severity", wording.Say(severity)),
            ("pieces", Whole(cut)),
            ("failures", wording.Count("count.failure", mayFail)),
            ("rejected", Whole(rejectedFrom))
        );

    /// <summary>One row of the characteristic.</summary>
    public IReadOnlyList<string> Row(SchemePoint entry)
    {
        ArgumentNullException.ThrowIfNull(entry);
        return
        [
            Typed(entry.FailingShare),
            Percent(entry.Acceptance, wording),
            Percent(entry.NormalAlone, wording),
            Number(entry.MeanPiecesCut, 1),
            Percent(entry.Normal, wording),
            Percent(entry.Tightened, wording),
            Percent(entry.Reduced, wording),
            entry.LotsToStop is { } lots
                ? Math.Round(lots).ToString(CultureInfo.InvariantCulture)
                : wording.Say("scheme.hardly-ever"),
        ];
    }

    /// <summary>What the reader should know, one sentence each.</summary>
    internal IEnumerable<string> Notes(PlannedScheme scheme)
    {
        yield return wording.Say("scheme.rules", ("standing", wording.Say(scheme.Sequence.Rules.Source.Standing)));
        yield return wording.Say("scheme.begins-again");
        yield return wording.Say(scheme.IsReductionAgreed ? "scheme.reduction-agreed" : "scheme.reduction-not-agreed");
        if (scheme.Plan(Severity.Normal).CountsDefects)
            yield return wording.Say("sampling.counts-defects");
        yield return wording.Say("scheme.not-iso");
    }
}
