using Alburnum.Acceptance.Variables;
using Alburnum.Penetration;

namespace Alburnum.Reports.Words;

/// <summary>What the verdict on a batch judged by variables rests on, in words.</summary>
/// <param name="wording">The language.</param>
public sealed class VariablesWords(Wording wording)
{
    /// <summary>The sentence of a reason.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A reason of a kind that no sentence is known for.</exception>
    public string Say(VariablesReason reason) =>
        reason switch
        {
            DemandUsed used => wording.Say("acceptance.rule-used", ("rule", Demand(used.Demand))),
            ValuesRead read => Read(read),
            ToleranceLimits limits => wording.Say(
                limits.IsExact ? "variables.limits" : "variables.limits-approximate",
                ("confidence", Percent(limits.Demand.Confidence)),
                ("share", Percent(limits.Demand.Share)),
                ("lower", Value(limits.Lower, limits.Demand)),
                ("upper", Value(limits.Upper, limits.Demand))
            ),
            ShareBounds bounds => wording.Say(
                "variables.share-bounds",
                ("confidence", Percent(bounds.Demand.Confidence)),
                ("lower", Percent(bounds.LowerShare)),
                ("limit", Value(bounds.Demand.Limit, bounds.Demand)),
                ("upper", Percent(bounds.UpperShare))
            ),
            SpreadNotFixed => wording.Say("variables.spread-not-fixed"),
            CountedAlone counted => wording.Say(
                "variables.counted-alone",
                ("reaching", Figures.Whole(counted.Reaching)),
                ("pieces", Figures.Whole(counted.Pieces)),
                ("confidence", Percent(counted.Demand.Confidence)),
                ("share", Percent(counted.ShareLowerBound)),
                ("supply", AcceptanceWords.Supply(counted.LotSize, wording))
            ),
            PopulationAssumed assumed => wording.Say(
                "variables.population-assumed",
                ("population", Shape(assumed.Population))
            ),
            PopulationDoubted doubted => wording.Say(
                "variables.population-doubted",
                ("population", Shape(doubted.Population))
            ),
            _ => throw ReasonWords.Unknown(reason),
        };

    /// <summary>What is asked of the measure.</summary>
    public string Demand(VariablesDemand demand)
    {
        ArgumentNullException.ThrowIfNull(demand);
        return wording.Say(
            "variables.demand",
            ("share", Percent(demand.Share)),
            ("limit", Value(demand.Limit, demand)),
            ("confidence", Percent(demand.Confidence))
        );
    }

    /// <summary>The whole in one sentence.</summary>
    /// <param name="judged">The judgement.</param>
    /// <param name="measure">What was measured.</param>
    public string Batch(VariablesJudgement judged, string measure)
    {
        ArgumentNullException.ThrowIfNull(judged);
        (string, string) by = ("measure", measure);
        return judged switch
        {
            { LowerLimit: null } => wording.Say("variables.batch-no-spread", by),
            { Verdict: Verdict.Undecided } => wording.Say("variables.batch-undecided", by),
            { Verdict: Verdict.Conforms } => wording.Say("variables.batch-conforms", by),
            _ => wording.Say("variables.batch-fails", by),
        };
    }

    private string Read(ValuesRead read)
    {
        List<string> parts =
        [
            read.Values is { } values
                ? wording.Say(
                    "variables.values-read",
                    ("pieces", Figures.Whole(read.Pieces)),
                    ("least", Value(values.Least, read.Demand)),
                    ("greatest", Value(values.Greatest, read.Demand))
                )
                : wording.Say("variables.none-read", ("pieces", Figures.Whole(read.Pieces))),
        ];
        if (read.BelowDetection > 0)
            parts.Add(wording.Say("variables.below-detection", ("pieces", Figures.Whole(read.BelowDetection))));
        if (read.CutOffAbove > 0)
            parts.Add(wording.Say("variables.cut-off-above", ("pieces", Figures.Whole(read.CutOffAbove))));
        return wording.Say("variables.seen", ("parts", string.Join("; ", parts)));
    }

    private string Shape(Population population) =>
        population switch
        {
            Population.Normal => wording.Say("variables.normal"),
            Population.LogNormal => wording.Say("variables.log-normal"),
            _ => throw new ArgumentOutOfRangeException(nameof(population), population, "Not a population."),
        };

    private static string Value(double value, VariablesDemand demand) => $"{Figures.Digits(value, 3)} {demand.Unit}";

    private string Percent(double share) => Figures.Percent(share, wording);
}
