using Alburnum.Requirements;

namespace Alburnum.Reports.Words;

/// <summary>Whether timber will do untreated, in words.</summary>
/// <param name="wording">The language.</param>
public sealed class DurabilityWords(Wording wording)
{
    /// <summary>A verdict on natural durability.</summary>
    public string Say(DurabilityVerdict verdict) =>
        verdict switch
        {
            DurabilityVerdict.Enough => wording.Say("requirements.durability.enough"),
            DurabilityVerdict.NormallyEnough => wording.Say("requirements.durability.normally-enough"),
            DurabilityVerdict.Depends => wording.Say("requirements.durability.depends"),
            DurabilityVerdict.NormallyTreat => wording.Say("requirements.durability.normally-treat"),
            DurabilityVerdict.Treat => wording.Say("requirements.durability.treat"),
            _ => throw new ArgumentOutOfRangeException(nameof(verdict), verdict, "Not a verdict."),
        };

    /// <summary>Years that heartwood lasted in the ground: "at least 25", "15 to 25", "under 5".</summary>
    public string Years(YearsInGround trial)
    {
        ArgumentNullException.ThrowIfNull(trial);
        return trial switch
        {
            { FromYears: { } from, ToYears: { } to } => wording.Say(
                "requirements.years.from-to",
                ("from", Figures.Whole(from)),
                ("to", Figures.Whole(to))
            ),
            { FromYears: { } from } => wording.Say("requirements.years.at-least", ("from", Figures.Whole(from))),
            _ => wording.Say("requirements.years.under", ("to", Figures.Whole(trial.ToYears ?? 0))),
        };
    }

    /// <summary>Whether timber will do untreated.</summary>
    public string Say(UntreatedTimber untreated)
    {
        ArgumentNullException.ThrowIfNull(untreated);
        var species = untreated.Species;
        var sapwood = Say(untreated.Sapwood);
        if (untreated.UseClass == UseClass.Five)
            return untreated.IsUseClassOpen
                ? wording.Say("requirements.untreated.if-salt-water", ("species", species.Name), ("sapwood", sapwood))
                : wording.Say("requirements.untreated.salt-water", ("species", species.Name), ("sapwood", sapwood));
        if (
            untreated is not { Heartwood: { } careful, HeartwoodAtBest: { } best }
            || species.Durability is not { } known
        )
            return wording.Say("requirements.untreated.not-known", ("species", species.Name), ("sapwood", sapwood));
        var useClass = wording.Say(
            untreated.IsUseClassOpen ? "requirements.untreated.if-class" : "requirements.untreated.in-class",
            ("class", untreated.UseClass.Label())
        );
        var durability = known.Value.Label;
        return careful == best
            ? wording.Say(
                "requirements.untreated.exact",
                ("species", species.Name),
                ("where", useClass),
                ("durability", durability),
                ("heartwood", Say(careful)),
                ("sapwood", sapwood)
            )
            : wording.Say(
                "requirements.untreated.range",
                ("species", species.Name),
                ("where", useClass),
                ("durability", durability),
                ("heartwood", Say(careful)),
                ("best", Say(best)),
                ("sapwood", sapwood)
            );
    }
}
