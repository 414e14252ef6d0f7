using Alburnum.Workflows.Handling;

namespace Alburnum.Reports.Words;

/// <summary>When a preservative has fixed, in words.</summary>
/// <param name="wording">The language.</param>
public sealed class FixationWords(Wording wording)
{
    // Beyond two days people count in days.
    private const double HoursBeforeDays = 48;
    private const double HoursOfDay = 24;

    /// <summary>In the language chosen.</summary>
    public static FixationWords Current => new(Wording.Current);

    /// <summary>What to mind, one sentence each.</summary>
    public IReadOnlyList<string> Cautions =>
        [wording.Say("fixation.caution-test"), wording.Say("fixation.caution-label")];

    /// <summary>What is answered.</summary>
    /// <param name="preservative">Name of the preservative.</param>
    /// <param name="celsius">Temperature of the wood, °C.</param>
    public string Title(string preservative, double celsius) =>
        wording.Say("fixation.title", ("preservative", preservative), ("celsius", Figures.Digits(celsius, 1)));

    /// <summary>A strength of the solution.</summary>
    /// <param name="percent">% by mass.</param>
    public string Strength(double percent) =>
        wording.Say("fixation.strength", ("strength", Figures.Digits(percent, 2)));

    /// <summary>Name of the time to a share.</summary>
    /// <param name="share">0 to 1.</param>
    public string TimeTo(double share) => wording.Say("fixation.time-to", ("share", Figures.Percent(share, wording)));

    /// <summary>Name of the share after a time.</summary>
    /// <param name="hours">Hours.</param>
    public string After(double hours) => wording.Say("fixation.after", ("time", Time(hours)));

    /// <summary>A share that has fixed.</summary>
    /// <param name="share">0 to 1; null while the first zone lasts.</param>
    public string Fixed(double? share) =>
        share is { } known ? Figures.Percent(known, wording) : wording.Say("fixation.first-zone-lasts");

    /// <summary>What the figures rest on, one sentence each.</summary>
    public IEnumerable<string> Notes(Fixation fixation)
    {
        ArgumentNullException.ThrowIfNull(fixation);
        if (fixation.Law is not { } law)
        {
            yield return wording.Say("fixation.not-known", ("preservative", fixation.Asked.Preservative.Name));
            yield break;
        }
        yield return wording.Say(
            "fixation.law",
            ("counts", law.Counts),
            ("wood", law.Wood),
            ("least", Figures.Digits(law.Celsius.Low, 1)),
            ("most", Figures.Digits(law.Celsius.High, 1)),
            ("source", law.Provenance.Citation),
            ("standing", wording.Say(law.Provenance.Standing))
        );
        yield return wording.Say(
            "fixation.first-zone",
            ("share", Figures.WholePercent(law.FirstShare, wording)),
            ("time", Time(law.FirstZoneHours(fixation.Asked.Celsius))),
            ("strength", Figures.Digits(law.FirstStrengthPercent, 2))
        );
        yield return wording.Say("fixation.scatter");
    }

    /// <summary>A time, in hours or days.</summary>
    /// <param name="hours">Hours.</param>
    public string Time(double hours) =>
        hours < HoursBeforeDays
            ? wording.Say("fixation.hours", ("hours", Figures.Significant(hours)))
            : wording.Say("fixation.days", ("days", Figures.Significant(hours / HoursOfDay)));
}
