using Alburnum.Acceptance.History;
using Alburnum.Workflows.Acceptance;
using static Alburnum.Reports.Words.Figures;

namespace Alburnum.Reports.Words;

/// <summary>A plant's history in words.</summary>
/// <param name="wording">The language.</param>
public sealed class HistoryWords(Wording wording)
{
    /// <summary>In the language chosen.</summary>
    public static HistoryWords Current => new(Wording.Current);

    /// <summary>How rarely the charts signal falsely, and how soon they find a shift.</summary>
    public IReadOnlyList<string> Say(RunLengths lengths)
    {
        ArgumentNullException.ThrowIfNull(lengths);
        return
        [
            wording.Say(
                "history.ewma",
                ("weight", Digits(lengths.Rules.Ewma.Lambda, 6)),
                ("false", Digits(lengths.EwmaFalse, 0)),
                ("found", Digits(lengths.EwmaFound, 0))
            ),
            wording.Say(
                "history.cusum",
                ("allowance", Digits(lengths.Rules.Cusum.Allowance, 6)),
                ("interval", Digits(lengths.Rules.Cusum.Interval, 6)),
                ("false", Digits(lengths.CusumFalse, 0)),
                ("found", Digits(lengths.CusumFound, 0))
            ),
        ];
    }

    /// <summary>How many charges were read.</summary>
    public string Charges(long charges) => wording.Say("history.charges", ("charges", Digits(charges)));

    /// <summary>A measure of which no charge has a value.</summary>
    public string NoValues() => wording.Say("history.no-values");

    /// <summary>What stands above the signals, or that there are none, or that no chart ran that could have signalled.</summary>
    /// <param name="any">Whether there are signals.</param>
    /// <param name="isCharted">Whether any chart ran.</param>
    public string Signals(bool any, bool isCharted) =>
        wording.Say(
            (any, isCharted) switch
            {
                (true, _) => "history.signals",
                (false, true) => "history.no-signals",
                (false, false) => "history.no-chart",
            }
        );

    /// <summary>What one charge signals.</summary>
    public string Charge(string charge, IEnumerable<string> signals) =>
        wording.Say("history.charge", ("charge", charge), ("signals", string.Join("; ", signals)));

    /// <summary>That more charges signalled than are shown.</summary>
    /// <param name="option">What shows them, as the reader writes it.</param>
    public string Earlier(string option) =>
        wording.Say("history.earlier", ("kept", Whole(WatchPlant.SignalsKept)), ("option", option));

    /// <summary>Mean, spread and range of all charges.</summary>
    public string Spread(double mean, double standardDeviation, double least, double greatest) =>
        wording.Say(
            "history.spread",
            ("mean", Digits(mean)),
            ("deviation", Digits(standardDeviation)),
            ("least", Digits(least)),
            ("greatest", Digits(greatest))
        );

    /// <summary>The baseline that charges are held against, and how many signalled.</summary>
    /// <param name="mean">Mean of the baseline.</param>
    /// <param name="spread">Its spread; 0 where there is none.</param>
    /// <param name="signals">Charges that signalled.</param>
    public string Baseline(double mean, double spread, long signals) =>
        spread > 0
            ? wording.Say(
                "history.baseline",
                ("mean", Digits(mean)),
                ("spread", Digits(spread)),
                ("signals", Digits(signals))
            )
            : wording.Say("history.no-baseline");

    /// <summary>How the charges lie against a limit.</summary>
    /// <param name="limit">The limit.</param>
    /// <param name="below">Charges below it.</param>
    /// <param name="capability">How far the mean lies above it; null where there is no spread.</param>
    public string Limit(double limit, long below, Capability? capability)
    {
        if (capability is null)
            return wording.Say("history.limit-alone", ("limit", Digits(limit)), ("below", Digits(below)));
        return wording.Say(
            "history.limit",
            ("limit", Digits(limit)),
            ("below", Digits(below)),
            ("index", Digits(capability.Index)),
            ("lower", Digits(capability.LowerBound)),
            ("share", Percent(capability.ShareBelow, wording))
        );
    }
}
