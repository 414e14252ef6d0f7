using Alburnum.Penetration;
using Alburnum.Requirements;

namespace Alburnum.Reports.Words;

/// <summary>What the verdict on one piece rests on, in words.</summary>
/// <param name="wording">The language.</param>
public sealed class PenetrationWords(Wording wording)
{
    private readonly DepthRuleWords _depths = new(wording);

    /// <summary>The sentence of a reason.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A reason of a kind that no sentence is known for.</exception>
    public string Say(PieceReason reason) =>
        reason switch
        {
            NoDepthRequired => wording.Say("penetration.no-depth-required"),
            ZoneAbsent { Zone: WoodZone.ExposedHeartwood } absent => wording.Say(
                "penetration.no-open-heartwood",
                ("rule", Rule(absent.Rule))
            ),
            ZoneAbsent absent => wording.Say("penetration.no-sapwood", ("rule", Rule(absent.Rule))),
            DepthNotDetermined => wording.Say("penetration.depth-not-determined"),
            OutlineOffEdge => wording.Say("penetration.outline-off-edge"),
            NothingRead nothing => wording.Say("penetration.nothing-read", ("rule", Rule(nothing.Rule))),
            DecidedAt decided => Decided(decided),
            ReachedOnFace face => wording.Say(
                "penetration.reached-on-face",
                ("rule", Rule(face.Rule)),
                ("reached", Percent(face.ReachedShare, face.RequiredShare)),
                ("face", Figures.Whole(face.Face)),
                ("asked", Percent(face.RequiredShare)),
                ("depth", Mm(face.DepthMm, face.StandardUncertaintyMm)),
                ("u", Mm(face.StandardUncertaintyMm, face.StandardUncertaintyMm)),
                ("probability", Certainty(face.Probability.Low))
            ),
            GuardBand band => wording.Say(
                "penetration.guard-band",
                ("depth", Mm(band.DepthMm, band.StandardUncertaintyMm)),
                ("from", Mm(band.ConformsFromMm, band.StandardUncertaintyMm)),
                ("upTo", Mm(band.FailsUpToMm, band.StandardUncertaintyMm))
            ),
            FacesNotRead unread => wording.Say(
                "penetration.faces-not-read",
                ("faces", string.Join(", ", unread.Faces.Select(Figures.Whole)))
            ),
            FacesWithoutReading without => wording.Say(
                "penetration.faces-without-reading",
                ("faces", string.Join(", ", without.Faces.Select(Figures.Whole)))
            ),
            SapwoodBorderMissing => wording.Say("penetration.border-missing"),
            NotDemonstrable => wording.Say("penetration.not-demonstrable"),
            OppositeFacesNeeded needed => wording.Say(
                "penetration.opposite-faces-needed",
                ("rule", Rule(needed.Limit))
            ),
            UntreatedArea area => wording.Say(
                "penetration.untreated-area",
                ("rule", Rule(area.Limit)),
                ("share", Percent(area.UntreatedShare.Value, area.Limit.AreaShare)),
                ("u", Percent(area.UntreatedShare.StandardUncertainty)),
                ("probability", Certainty(area.Probability))
            ),
            UntreatedReach reach => wording.Say(
                "penetration.untreated-reach",
                ("share", Percent(reach.AcrossShare.Value, Math.Min(reach.Limit.ThroughShare, reach.Limit.SideShare))),
                ("probability", Certainty(reach.Probability))
            ),
            JudgedElsewhere { Verdict: Verdict.Conforms } => wording.Say("penetration.passed-elsewhere"),
            JudgedElsewhere { Verdict: Verdict.DoesNotConform } => wording.Say("penetration.failed-elsewhere"),
            JudgedElsewhere => wording.Say("penetration.not-determined"),
            _ => throw ReasonWords.Unknown(reason),
        };

    private string Decided(DecidedAt decided)
    {
        var said = wording.Say(
            "penetration.decided-at",
            ("rule", Rule(decided.Rule)),
            ("reading", Reading(decided.Reading)),
            ("positions", wording.Count("count.position", decided.Positions)),
            (
                "depth",
                decided.TurnsElsewhere
                    ? wording.Say(
                        "penetration.least-sure-depth",
                        ("least", Mm(decided.LeastDepthMm.Value, decided.LeastDepthMm.StandardUncertainty)),
                        ("depth", Mm(decided.DepthMm, decided.StandardUncertaintyMm))
                    )
                    : Mm(
                        decided.Reading == DepthReading.Minimum ? decided.LeastDepthMm.Value : decided.DepthMm,
                        decided.StandardUncertaintyMm
                    )
            ),
            ("required", Figures.Mm(decided.RequiredMm)),
            ("face", Figures.Whole(decided.Face)),
            ("place", Figures.Mm(decided.PositionMm)),
            ("u", Mm(decided.StandardUncertaintyMm, decided.StandardUncertaintyMm)),
            ("probability", Certainty(decided.Probability.Low))
        );
        // Where the depth alone settles it, nothing turns on what is taken beforehand.
        return decided.AsksForWholeZone && !Figures.IsNearlyAllOrNothing(decided.Probability.Low)
            ? $"{said} {FilledZone(decided.ProbabilityByBelief)}"
            : said;
    }

    private string FilledZone(ProbabilityRange byBelief) =>
        wording.Say(
            "penetration.filled-zone",
            ("unlikely", Figures.WholePercent(DecidedAt.UnlikelyFilled, wording)),
            ("likely", Figures.WholePercent(DecidedAt.LikelyFilled, wording)),
            ("low", Certainty(byBelief.Low)),
            ("high", Certainty(byBelief.High))
        );

    private string Reading(DepthReading reading) =>
        reading switch
        {
            DepthReading.Minimum => wording.Say("penetration.minimum"),
            DepthReading.FifthPercentile => wording.Say("penetration.fifth-percentile"),
            _ => throw new ArgumentOutOfRangeException(nameof(reading), reading, "Not a reading."),
        };

    private string Rule(DepthRule rule) => Wording.Capital(_depths.Say(rule));

    private static string Mm(double mm, double uMm) => Figures.Rounded(mm, uMm, "mm");

    private string Percent(double share, double? limit = null) => Figures.Percent(share, wording, limit);

    private string Certainty(double probability) => Figures.Certainty(probability, wording);
}
