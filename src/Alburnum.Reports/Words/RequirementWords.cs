using System.Globalization;
using Alburnum.Requirements;
using Alburnum.Workflows.Requirements;

namespace Alburnum.Reports.Words;

/// <summary>Says what a code of practice demands, and why.</summary>
public static class RequirementWords
{
    private static Wording Words => Wording.English;

    /// <summary>"sawn" or "round".</summary>
    public static string Say(TimberForm form) =>
        form == TimberForm.Sawn ? Words.Say("requirements.form.sawn") : Words.Say("requirements.form.round");

    /// <summary>A question about where a piece stands.</summary>
    public static string Say(ExposureQuestion question) =>
        question switch
        {
            ExposureQuestion.SaltWater => Words.Say("requirements.question.salt-water"),
            ExposureQuestion.GroundOrFreshWater => Words.Say("requirements.question.ground"),
            ExposureQuestion.Weather => Words.Say("requirements.question.weather"),
            ExposureQuestion.WaterStays => Words.Say("requirements.question.water-stays"),
            ExposureQuestion.Damp => Words.Say("requirements.question.damp"),
            _ => throw new ArgumentOutOfRangeException(nameof(question), question, "Not a question."),
        };

    /// <summary>What goes with a use class.</summary>
    public static string Say(UseClassRemark remark) =>
        remark switch
        {
            UseClassRemark.CoatingKeepsClass => Words.Say("requirements.use-class.coating"),
            UseClassRemark.ChooseLongerLife => Words.Say("requirements.use-class.longer-life"),
            UseClassRemark.EngineerDecides => Words.Say("requirements.use-class.engineer"),
            UseClassRemark.TermitesBesideClass => Words.Say("requirements.use-class.termites"),
            UseClassRemark.BeetlesBesideClass => Words.Say("requirements.use-class.beetles"),
            _ => throw new ArgumentOutOfRangeException(nameof(remark), remark, "Not a remark."),
        };

    /// <summary>A trap, with its standing.</summary>
    public static string Say(UseClassTrap trap)
    {
        ArgumentNullException.ThrowIfNull(trap);
        return Words.Say(
            "requirements.use-class.trap",
            ("sentence", trap.Sentence),
            ("standing", trap.Provenance.Standing.InWords())
        );
    }

    /// <summary>A verdict on natural durability.</summary>
    public static string Say(DurabilityVerdict verdict) =>
        verdict switch
        {
            DurabilityVerdict.Enough => Words.Say("requirements.durability.enough"),
            DurabilityVerdict.NormallyEnough => Words.Say("requirements.durability.normally-enough"),
            DurabilityVerdict.Depends => Words.Say("requirements.durability.depends"),
            DurabilityVerdict.NormallyTreat => Words.Say("requirements.durability.normally-treat"),
            DurabilityVerdict.Treat => Words.Say("requirements.durability.treat"),
            _ => throw new ArgumentOutOfRangeException(nameof(verdict), verdict, "Not a verdict."),
        };

    /// <summary>Whether timber will do untreated.</summary>
    public static string Say(UntreatedTimber untreated)
    {
        ArgumentNullException.ThrowIfNull(untreated);
        var species = untreated.Species;
        var sapwood = Say(untreated.Sapwood);
        if (
            untreated is not { Heartwood: { } careful, HeartwoodAtBest: { } best }
            || species.Durability is not { } known
        )
            return Words.Say("requirements.untreated.not-known", ("species", species.Name), ("sapwood", sapwood));
        var useClass = untreated.UseClass.Label();
        var durability = known.Value.Label;
        return careful == best
            ? Words.Say(
                "requirements.untreated.exact",
                ("species", species.Name),
                ("class", useClass),
                ("durability", durability),
                ("heartwood", Say(careful)),
                ("sapwood", sapwood)
            )
            : Words.Say(
                "requirements.untreated.range",
                ("species", species.Name),
                ("class", useClass),
                ("durability", durability),
                ("heartwood", Say(careful)),
                ("best", Say(best)),
                ("sapwood", sapwood)
            );
    }

    /// <summary>What a reader should know beside a requirement.</summary>
    public static string Say(RequirementRemark remark) =>
        remark switch
        {
            HeartwoodTakenAsExposed => Words.Say("requirements.remark.heartwood-exposed"),
            NoteOnSpecies(var species) => Words.Say(
                "requirements.remark.note",
                ("species", species.Name),
                ("note", species.Notes)
            ),
            LastedInGround(var trial) => Words.Say(
                "requirements.remark.lasted",
                ("durability", trial.DurabilityClass.ToString(CultureInfo.InvariantCulture)),
                ("years", trial.Years),
                ("standing", trial.Provenance.Standing.InWords()),
                ("source", trial.Provenance.Citation)
            ),
            OnOtherScales(var species, var scales) => Words.Say(
                "requirements.remark.other-scales",
                ("species", species.Name),
                ("scales", string.Join(". ", scales.Select(OnScale)))
            ),
            TrapOfUseClass(var trap) => Say(trap),
            ElsewhereCalled(var match) => Words.Say(
                "requirements.remark.elsewhere",
                ("situation", match.Situation),
                ("anz", match.AustralianNewZealand),
                ("american", match.American)
            ),
            CodeGoverns => Words.Say("requirements.remark.code-governs"),
            _ => throw new ArgumentOutOfRangeException(nameof(remark), remark, "Not a remark."),
        };

    private static string OnScale(Timber.OtherScale scale) =>
        Words.Say(
            "requirements.remark.other-scale",
            ("scale", scale.Scale),
            ("says", scale.Says),
            ("means", scale.Means),
            ("standing", scale.Provenance.Standing.InWords())
        );
}
