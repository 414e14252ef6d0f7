using Alburnum.Acceptance.Variables;

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
                ("confidence", Figures.Typed(limits.Demand.Confidence)),
                ("share", Figures.Typed(limits.Demand.Share)),
                ("lower", Value(limits.Lower, limits.Demand)),
                ("upper", Value(limits.Upper, limits.Demand))
            ),
            ShareBounds bounds => wording.Say(
                "variables.share-bounds",
                ("confidence", Figures.Typed(bounds.Demand.Confidence)),
                ("lower", Figures.AtLeast(bounds.LowerShare, wording, bounds.Demand.Share)),
                ("limit", Value(bounds.Demand.Limit, bounds.Demand)),
                ("upper", Figures.AtMost(bounds.UpperShare, wording, bounds.Demand.Share))
            ),
            SpreadNotFixed => wording.Say("variables.spread-not-fixed"),
            LotMeasured whole => wording.Say(
                "variables.lot-measured",
                ("pieces", Figures.Whole(whole.Pieces)),
                ("reaching", Figures.Whole(whole.Reaching)),
                ("failing", Figures.Whole(whole.Failing))
            ),
            CountedAlone counted => Counted(counted),
            OnlyMeasureJudged => wording.Say("variables.nothing-else"),
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
            ("share", Figures.Typed(demand.Share)),
            ("limit", Value(demand.Limit, demand)),
            ("confidence", Figures.Typed(demand.Confidence))
        );
    }

    private string Read(ValuesRead read)
    {
        var others = read.BelowDetection.Count + read.CutOffAbove.Count > 0;
        List<string> parts =
        [
            .. read.BelowDetection.Select(below => CutOff("variables.below-detection", below, read.Demand)),
            .. read.Values is { } values
                ?
                [
                    wording.Say(
                        others ? "variables.others-read" : "variables.values-read",
                        ("least", Value(values.Least, read.Demand)),
                        ("greatest", Value(values.Greatest, read.Demand))
                    ),
                ]
                : (string[])[],
            .. read.CutOffAbove.Select(above => CutOff("variables.cut-off-above", above, read.Demand)),
        ];
        return wording.Say(
            "variables.seen",
            ("pieces", wording.Count("count.piece", read.Pieces)),
            ("parts", string.Join("; ", parts))
        );
    }

    private string CutOff(string key, CutOffReadings cut, VariablesDemand demand) =>
        wording.Say(key, ("pieces", Figures.Whole(cut.Pieces)), ("limit", Value(cut.Limit, demand)));

    private string Shape(Population population) =>
        population switch
        {
            Population.Normal => wording.Say("variables.normal"),
            Population.LogNormal => wording.Say("variables.log-normal"),
            _ => throw new ArgumentOutOfRangeException(nameof(population), population, "Not a population."),
        };

    private static string Value(double value, VariablesDemand demand) => $"{Figures.Digits(value, 3)} {demand.Unit}";

    private string Counted(CountedAlone counted)
    {
        (string, string) reaching = ("reaching", Figures.Whole(counted.Reaching)),
            pieces = ("pieces", Figures.Whole(counted.Pieces)),
            confidence = ("confidence", Figures.Typed(counted.Demand.Confidence)),
            supply = ("supply", AcceptanceWords.Supply(counted.LotSize, wording));
        return counted.ShareLowerBound > 0
            ? wording.Say(
                "variables.counted-alone",
                reaching,
                pieces,
                confidence,
                ("share", Figures.AtLeast(counted.ShareLowerBound, wording, counted.Demand.Share)),
                supply
            )
            : wording.Say("variables.counted-alone-none", reaching, pieces, confidence, supply);
    }
}
