using Alburnum.Reports.Handling;
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
    public string Title(FixationDocument document)
    {
        ArgumentNullException.ThrowIfNull(document);
        return wording.Say(
            "fixation.title",
            ("preservative", document.Preservative),
            ("celsius", Figures.Digits(document.TemperatureCelsius, 1))
        );
    }

    /// <summary>Headings: one column for each strength.</summary>
    public IReadOnlyList<string> Headings(FixationDocument document)
    {
        ArgumentNullException.ThrowIfNull(document);
        return
        [
            "",
            .. document.Strengths.Select(each =>
                wording.Say("fixation.strength", ("strength", Figures.Digits(each.StrengthPercent, 2)))
            ),
        ];
    }

    /// <summary>Time to each share, and the share after the hours asked for.</summary>
    public IEnumerable<IReadOnlyList<string>> Rows(FixationDocument document)
    {
        ArgumentNullException.ThrowIfNull(document);
        for (var n = 0; n < Fixation.Shares.Count; n++)
            yield return
            [
                wording.Say("fixation.time-to", ("share", Figures.Percent(Fixation.Shares[n], wording))),
                .. document.Strengths.Select(each => Time(each.HoursTo[n].Hours)),
            ];
        if (document.Hours is { } asked)
            yield return
            [
                wording.Say("fixation.after", ("time", Time(asked))),
                .. document.Strengths.Select(each =>
                    each.ShareAfter is { } share
                        ? Figures.Percent(share, wording)
                        : wording.Say("fixation.first-zone-lasts")
                ),
            ];
    }

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

    private string Time(double hours) =>
        hours < HoursBeforeDays
            ? wording.Say("fixation.hours", ("hours", Figures.Significant(hours)))
            : wording.Say("fixation.days", ("days", Figures.Significant(hours / HoursOfDay)));
}
