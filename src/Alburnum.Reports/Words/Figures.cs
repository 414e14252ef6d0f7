using System.Globalization;
using Alburnum.Penetration;

namespace Alburnum.Reports.Words;

/// <summary>Numbers as people read them: shares and probabilities in per cent, measured values rounded by their uncertainty, each with its unit.</summary>
/// <remarks>Where a word belongs to the number ("over 99.9 %") it comes from the language given; from the one chosen where none is.</remarks>
public static class Figures
{
    private const int MostDecimals = 2;

    /// <summary>A share in per cent, to tenths. What is not all or nothing is not rounded to 0 or 100 %.</summary>
    /// <param name="share">0 to 1.</param>
    /// <param name="wording">The language.</param>
    /// <param name="limit">What it is held against, 0 to 1: it is not rounded to that limit, nor past it. Null where it is held against nothing.</param>
    public static string Percent(double share, Wording? wording = null, double? limit = null) =>
        share switch
        {
            > 0 and < 0.0005 => Under("0.1 %", wording),
            >= 0.9995 and < 1 => Over("99.9 %", wording),
            _ => $"{Tenths(share * 100, limit * 100)} %",
        };

    // Rounding does not say that a limit is met which is not, or the other way round: it goes to the side on which the value lies.
    private static string Tenths(double percent, double? limitPercent)
    {
        var shown = Math.Round(percent, 1, MidpointRounding.AwayFromZero);
        return Digits(
            limitPercent switch
            {
                { } limit when percent < limit && shown >= limit => Math.Floor(percent * 10) / 10,
                { } limit when percent > limit && shown <= limit => Math.Ceiling(percent * 10) / 10,
                _ => percent,
            },
            1
        );
    }

    /// <summary>A lower bound on a share, to be read after "at least": 99.9 % where it lies above that and is not all.</summary>
    /// <param name="share">0 to 1.</param>
    /// <param name="wording">The language.</param>
    /// <param name="limit">A share that it is held against, 0 to 1; null where there is none.</param>
    public static string AtLeast(double share, Wording wording, double? limit = null) =>
        Percent(share < 1 ? Math.Min(share, 0.999) : share, wording, limit);

    /// <summary>An upper bound on a share, to be read after "at most": 0.1 % where it lies below that and is not nothing, all where it lies above 99.9 %.</summary>
    /// <param name="share">0 to 1.</param>
    /// <param name="wording">The language.</param>
    /// <param name="limit">A share that it is held against, 0 to 1; null where there is none.</param>
    public static string AtMost(double share, Wording wording, double? limit = null) =>
        Percent(
            share > 0.999 ? 1
                : share > 0 ? Math.Max(share, 0.001)
                : 0,
            wording,
            limit
        );

    /// <summary>True for a share that is written as under 0.1 % or over 99.9 %, to which no spread can be added.</summary>
    /// <param name="share">0 to 1.</param>
    public static bool IsNearlyAllOrNothing(double share) => share is < 0.0005 or >= 0.9995;

    /// <summary>A share as whole per cent, where tenths would say more than was measured. What is not all or nothing is not rounded to 0 or 100 %.</summary>
    /// <param name="share">0 to 1.</param>
    /// <param name="wording">The language.</param>
    public static string WholePercent(double share, Wording? wording = null) =>
        share switch
        {
            > 0 and < 0.005 => Under("1 %", wording),
            >= 0.995 and < 1 => Over("99 %", wording),
            _ => $"{Number(share * 100, 0)} %",
        };

    /// <summary>A probability in per cent. No measurement is certain, so none is written as 0 or 100 %; and none is rounded past a limit of the usual decision rule.</summary>
    /// <param name="probability">0 to 1; null is "not determined".</param>
    /// <param name="wording">The language.</param>
    /// <param name="limit">What it is held against beside those limits, 0 to 1; null where nothing else is.</param>
    public static string Certainty(double? probability, Wording? wording = null, double? limit = null) =>
        probability is { } known
            ? Percent(Math.Clamp(known, 1e-9, 1 - 1e-9), wording, limit ?? NearestDecision(known))
            : (wording ?? Wording.Current).Say("figures.not-determined");

    private static double NearestDecision(double probability) =>
        probability > 0.5 ? DecisionRule.Usual.ConformsFrom : DecisionRule.Usual.FailsUpTo;

    /// <summary>A share that someone typed, in per cent, with all the digits typed: nothing is rounded, and there is no ceiling.</summary>
    /// <param name="share">0 to 1.</param>
    public static string Typed(double share) => $"{Digits(share * 100, 6)} %";

    /// <summary>A value with its standard uncertainty, both rounded to the uncertainty's first significant digit (second where it is 1).</summary>
    /// <remarks>The usual rounding of measured values, JCGM 100:2008, 7.2.6.</remarks>
    /// <param name="value">The value.</param>
    /// <param name="standardUncertainty">Its standard uncertainty. 0 or more.</param>
    /// <param name="unit">Unit of both; may be empty.</param>
    /// <param name="most">Most decimals written.</param>
    public static string Measured(double value, double standardUncertainty, string unit, int most = MostDecimals)
    {
        var decimals = Decimals(standardUncertainty, most);
        return $"{Number(value, decimals)} ± {Number(standardUncertainty, decimals)} {unit}".TrimEnd();
    }

    /// <summary>What ± means, for whoever meets it: said wherever <see cref="Measured"/> is shown.</summary>
    public static string PlusMinus => Wording.Said("figures.plus-minus");

    /// <summary>A value alone, rounded as <see cref="Measured"/> rounds it.</summary>
    public static string Rounded(double value, double standardUncertainty, string unit) =>
        $"{Number(value, Decimals(standardUncertainty, MostDecimals))} {unit}".TrimEnd();

    /// <summary>A day.</summary>
    public static string Day(DateOnly day, Wording? wording = null)
    {
        var words = wording ?? Wording.Current;
        return words.Say(
            "date.day",
            ("day", Whole(day.Day)),
            ("month", words.Say($"date.month.{Whole(day.Month)}")),
            ("year", Whole(day.Year))
        );
    }

    /// <summary>A day with hour and minute.</summary>
    public static string Moment(DateTime at, Wording? wording = null) =>
        (wording ?? Wording.Current).Say(
            "date.moment",
            ("day", Day(DateOnly.FromDateTime(at), wording)),
            ("time", at.ToString("HH:mm", CultureInfo.InvariantCulture))
        );

    /// <summary>A number with so many decimals.</summary>
    public static string Number(double value, int decimals) =>
        Math.Round(value, decimals).ToString($"F{decimals}", CultureInfo.InvariantCulture);

    /// <summary>A number rounded up to so many decimals, at least one in the last: rounded down it would promise too much.</summary>
    /// <param name="value">0 or more.</param>
    /// <param name="decimals">Decimals, 0 or more.</param>
    public static string NumberUp(double value, int decimals)
    {
        var unit = Math.Pow(10, -decimals);
        return Number(Math.Max(1, Math.Ceiling(value / unit * (1 - 1e-9))) * unit, decimals);
    }

    /// <summary>A number with as many decimals as it has, at most so many.</summary>
    public static string Digits(double value, int most = 2) =>
        value.ToString("0." + new string('#', most), CultureInfo.InvariantCulture);

    /// <summary>A value of which no uncertainty is known, to three significant digits; whole digits stay.</summary>
    /// <param name="value">0 or more.</param>
    public static string Significant(double value) => Significant(value, Math.Round);

    /// <summary>A limit that a value lies below, rounded up to three significant digits: rounded down it would promise too much.</summary>
    /// <param name="value">Above 0.</param>
    public static string Limit(double value) =>
        // What is a hair above a digit is that digit.
        Significant(value, scaled => Math.Ceiling(scaled * (1 - 1e-9)));

    private static string Significant(double value, Func<double, double> round)
    {
        if (value <= 0)
            return "0";
        var decimals = Math.Clamp(2 - (int)Math.Floor(Math.Log10(value)), 0, 15);
        var scale = Math.Pow(10, decimals);
        return Digits(round(value * scale) / scale, decimals);
    }

    /// <summary>A count.</summary>
    public static string Whole(int count) => count.ToString(CultureInfo.InvariantCulture);

    /// <summary>A length, to hundredths of a millimetre.</summary>
    public static string Mm(double mm) => $"{Digits(mm)} mm";

    /// <summary>A retention, to thousandths.</summary>
    public static string KgPerM3(double retention) => $"{Digits(retention, 3)} kg/m³";

    private static string Over(string percent, Wording? wording) =>
        (wording ?? Wording.Current).Say("figures.over", ("percent", percent));

    private static string Under(string percent, Wording? wording) =>
        (wording ?? Wording.Current).Say("figures.under", ("percent", percent));

    private static int Decimals(double standardUncertainty, int most)
    {
        if (standardUncertainty <= 0)
            return 1;
        var exponent = (int)Math.Floor(Math.Log10(standardUncertainty));
        var leading = standardUncertainty / Math.Pow(10, exponent);
        return Math.Clamp(leading < 2 ? 1 - exponent : -exponent, 0, most);
    }
}
