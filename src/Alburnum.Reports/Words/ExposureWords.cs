using Alburnum.Requirements;

namespace Alburnum.Reports.Words;

/// <summary>Where a piece stands and the use class of it, in words.</summary>
/// <param name="wording">The language.</param>
public sealed class ExposureWords(Wording wording)
{
    /// <summary>The situation of a use class in a few words, after EN 335:2013.</summary>
    public string Situation(UseClass useClass) =>
        useClass switch
        {
            UseClass.One => wording.Say("requirements.situation.class-1"),
            UseClass.Two => wording.Say("requirements.situation.class-2"),
            UseClass.ThreeOne => wording.Say("requirements.situation.class-3-1"),
            UseClass.ThreeTwo => wording.Say("requirements.situation.class-3-2"),
            UseClass.Four => wording.Say("requirements.situation.class-4"),
            UseClass.Five => wording.Say("requirements.situation.class-5"),
            _ => throw new ArgumentOutOfRangeException(nameof(useClass), useClass, "Not a use class."),
        };

    /// <summary>A question about where a piece stands.</summary>
    public string Say(ExposureQuestion question) =>
        question switch
        {
            ExposureQuestion.SaltWater => wording.Say("requirements.question.salt-water"),
            ExposureQuestion.GroundOrFreshWater => wording.Say("requirements.question.ground"),
            ExposureQuestion.Weather => wording.Say("requirements.question.weather"),
            ExposureQuestion.WaterStays => wording.Say("requirements.question.water-stays"),
            ExposureQuestion.Damp => wording.Say("requirements.question.damp"),
            _ => throw new ArgumentOutOfRangeException(nameof(question), question, "Not a question."),
        };

    /// <summary>Where a piece stands, as far as it is known.</summary>
    public string Say(Exposure exposure)
    {
        ArgumentNullException.ThrowIfNull(exposure);
        return string.Join(
            "; ",
            new (string Place, bool? Answer)[]
            {
                (wording.Say("requirements.place.salt-water"), exposure.IsInSaltWater),
                (wording.Say("requirements.place.ground"), exposure.TouchesGroundOrFreshWater),
                (wording.Say("requirements.place.weather"), exposure.IsExposedToWeather),
                (wording.Say("requirements.place.water-stays"), exposure.LetsWaterStay),
                (wording.Say("requirements.place.damp"), exposure.MayGetDamp),
            }
                .Where(each => each.Answer is not null)
                .Select(each =>
                    wording.Say(
                        each.Answer == true ? "requirements.place.yes" : "requirements.place.no",
                        ("place", each.Place)
                    )
                )
        );
    }

    /// <summary>What goes with a use class.</summary>
    public string Say(UseClassRemark remark) =>
        remark switch
        {
            UseClassRemark.CoatingKeepsClass => wording.Say("requirements.use-class.coating"),
            UseClassRemark.ChooseLongerLife => wording.Say("requirements.use-class.longer-life"),
            UseClassRemark.EngineerDecides => wording.Say("requirements.use-class.engineer"),
            _ => throw new ArgumentOutOfRangeException(nameof(remark), remark, "Not a remark."),
        };

    /// <summary>What insects there are beside a use class, or which may be; nothing is ordered against them.</summary>
    /// <param name="hazard">Those that are said to live there.</param>
    /// <param name="notRuledOut">Those that nobody has ruled out.</param>
    public IEnumerable<string> Say(InsectHazard hazard, IReadOnlyList<Insect> notRuledOut)
    {
        ArgumentNullException.ThrowIfNull(hazard);
        ArgumentNullException.ThrowIfNull(notRuledOut);
        if (notRuledOut.Count > 0)
            return
            [
                wording.Say(
                    "requirements.use-class.insects-not-said",
                    ("insects", wording.Joined("rows.either", notRuledOut.Select(insect => insect.Name)))
                ),
            ];
        return hazard is { IsSaid: true, Attacking.Count: 0 }
            ? [wording.Say("requirements.use-class.no-insects")]
            : hazard.Attacking.Select(Say);
    }

    private string Say(Insect insect) =>
        wording.Say(
            "requirements.use-class.insects-there",
            ("insect", insect.Name),
            ("says", insect.Says),
            ("standing", wording.Say(insect.Provenance.Standing)),
            ("source", insect.Provenance.Citation)
        );

    /// <summary>A trap, with its standing.</summary>
    public string Say(UseClassTrap trap)
    {
        ArgumentNullException.ThrowIfNull(trap);
        return wording.Say(
            "requirements.use-class.trap",
            ("sentence", trap.Sentence),
            ("standing", wording.Say(trap.Provenance.Standing))
        );
    }
}
