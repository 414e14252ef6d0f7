using Alburnum.Requirements;
using Alburnum.Timber;
using MathNet.Numerics.Distributions;

namespace Alburnum.Penetration;

/// <summary>Judges one piece: its measured depth profile against the depth rule that it must meet.</summary>
/// <remarks>
/// Decides by the probability of conformity (JCGM 106:2012). Positions along a face share one reading and are not
/// independent samples: their errors are taken to move together, and the minimum carries at least the uncertainty that the
/// profile states for it. A zone that the piece does not have is "not demonstrable", never a pass; an unknown sapwood
/// boundary leaves the piece undecided unless the reading decides whichever way the boundary runs. See docs/science/acceptance.md.
/// </remarks>
public static class PieceConformity
{
    /// <summary>Share of a zone's positions on a face that must have been read before the face counts as read.</summary>
    public const double LeastShareRead = 0.5;

    private const double PercentileCoverage = 0.95;

    /// <summary>Depths that differ by less than this share of their uncertainty are one figure.</summary>
    private const double AlikeShare = 0.1;

    /// <summary>Judges a piece.</summary>
    /// <param name="rule">What is required.</param>
    /// <param name="profile">What was measured.</param>
    /// <param name="decision">How sure one must be.</param>
    /// <param name="reading">Which depth stands for a zone that must be reached as a whole.</param>
    public static Judgement Judge(
        DepthRule rule,
        DepthProfile profile,
        DecisionRule decision,
        DepthReading reading = DepthReading.Minimum
    )
    {
        var chance = Chance(rule, new(profile, decision, reading));
        if (!chance.Arises)
            return new(Verdict.Undecided, null, [.. chance.Reasons, new NotDemonstrable()]);
        var probability = chance.Probability;
        var (atLeast, atMost) = (decision.Decide(probability.Low), decision.Decide(probability.High));
        var verdict = atLeast == atMost ? atLeast : Verdict.Undecided;
        var undetermined = verdict == Verdict.Undecided && chance.EvidenceMissing && probability.Low < probability.High;
        return undetermined
            ? new(verdict, null, chance.Reasons)
            : new(verdict, probability, chance.Reasons) { MarginMm = chance.MarginMm };
    }

    /// <summary>True where what is required of a piece moves with the border of its sapwood, so that the border's uncertainty counts in the judgement.</summary>
    /// <param name="rule">What is required.</param>
    /// <param name="sapwoodMm">Depth at which the sapwood ends, with its standard uncertainty, mm. Above 0.</param>
    public static bool MovesWithBorder(DepthRule rule, Estimate sapwoodMm) =>
        rule switch
        {
            LeastDepth least => least.Zone == WoodZone.Sapwood
                && least.DepthMm > sapwoodMm.Value - sapwoodMm.StandardUncertainty,
            ShareOfZone share => share.Zone == WoodZone.Sapwood,
            AllOf all => all.Parts.Any(part => MovesWithBorder(part, sapwoodMm)),
            AnyOf any => any.Parts.Any(part => MovesWithBorder(part, sapwoodMm)),
            UntreatedHeartwoodLimit => true,
            _ => false,
        };

    private static DemandChance Chance(DepthRule rule, Evidence evidence) =>
        rule switch
        {
            NoDepth => new(ProbabilityRange.Exactly(1), Arises: true, EvidenceMissing: false, [new NoDepthRequired()]),
            LeastDepth least => Reach(
                new(least, least.Zone, least.Coverage, endMm => Math.Min(least.DepthMm, endMm)),
                evidence
            ),
            ShareOfZone share => Reach(new(share, share.Zone, 1, endMm => share.Share * endMm), evidence),
            AllOf all => DemandChance.All([.. all.Parts.Select(part => Chance(part, evidence))]),
            AnyOf any => DemandChance.Any([.. any.Parts.Select(part => Chance(part, evidence))]),
            UntreatedHeartwoodLimit limit => DemandChance.All([
                Chance(new ShareOfZone(WoodZone.Sapwood, 1), evidence),
                UntreatedCore.Within(limit, evidence.Profile),
            ]),
            _ => throw new ArgumentOutOfRangeException(nameof(rule), rule, "Not a depth rule."),
        };

    private static DemandChance Reach(ZoneDemand demand, Evidence evidence)
    {
        var (profile, decision) = (evidence.Profile, evidence.Decision);
        var faces = profile.Faces.Select(face => Zone(face, demand, profile.Section)).ToList();
        var positions = faces.SelectMany(face => face.Positions).ToList();
        if (faces.Sum(face => face.Found) == 0)
            return DemandChance.Open(new ZoneAbsent(demand.Rule, demand.Zone)) with { Arises = false };
        if (positions.Count == 0)
            return DemandChance.Open(new NothingRead(demand.Rule));

        List<Reason> reasons = [];
        var (probability, marginMm) =
            demand.Coverage < 1
                ? OnEveryFace(demand, faces, decision, reasons)
                : Throughout(demand.Rule, positions, evidence, reasons);

        int[] missing = [.. Enumerable.Range(1, profile.Section.FaceCount).Except(faces.Select(face => face.Number))];
        // A share is asked for on every face; a depth throughout is held against what was read, as a code holds it that counts cores.
        var isAskedOfEach = demand.Coverage < 1;
        if (missing.Length > 0 && !isAskedOfEach)
            reasons.Add(new FacesWithoutReading(missing));
        int[] unread =
        [
            .. faces.Where(face => face.IsUnread).Select(face => face.Number),
            .. isAskedOfEach ? missing : [],
        ];
        if (unread.Length > 0)
        {
            probability = new(0, probability.High);
            reasons.Add(new FacesNotRead(unread));
        }
        var borderMissing = positions.Any(position => !position.InZone);
        if (borderMissing && decision.Decide(probability.Low) != decision.Decide(probability.High))
            reasons.Add(new SapwoodBorderMissing());
        return new(probability, Arises: true, borderMissing || unread.Length > 0, reasons) { MarginMm = marginMm };
    }

    /// <summary>The whole zone must be reached: one order statistic over all faces.</summary>
    private static (ProbabilityRange Probability, Estimate? MarginMm) Throughout(
        DepthRule rule,
        List<DepthAtPosition> positions,
        Evidence evidence,
        List<Reason> reasons
    )
    {
        var isMinimum = evidence.Reading == DepthReading.Minimum;
        var statistics = evidence.Profile.Statistics;
        var statistic = isMinimum ? statistics.MinimumMm : statistics.FifthPercentileMm;
        var (deciding, probability) = Deciding(
            positions,
            isMinimum ? 1 : PercentileCoverage,
            statistic.StandardUncertainty
        );
        var u = Math.Max(deciding.StandardUncertaintyMm, statistic.StandardUncertainty);
        var leastRead = positions.MinBy(position => position.DepthMm);
        var least =
            positions.Count == Read(evidence.Profile)
                ? statistics.MinimumMm
                : new(leastRead.DepthMm, leastRead.StandardUncertaintyMm);
        var turnsElsewhere = isMinimum && deciding.DepthMm > least.Value + AlikeShare * u;
        reasons.Add(
            new DecidedAt
            {
                Rule = rule,
                Reading = evidence.Reading,
                Positions = positions.Count,
                LeastDepthMm = least,
                TurnsElsewhere = turnsElsewhere,
                Face = deciding.Face,
                PositionMm = deciding.PositionMm,
                DepthMm = deciding.DepthMm,
                RequiredMm = deciding.RequiredMm,
                AsksForWholeZone = deciding.AsksForWholeZone,
                StandardUncertaintyMm = u,
                Probability = probability,
            }
        );
        if (!deciding.AsksForWholeZone && u > 0)
            reasons.Add(
                // Of the figure that is told.
                GuardBandAbout(deciding, u, evidence.Decision) with
                {
                    DepthMm = isMinimum && !turnsElsewhere ? least.Value : deciding.DepthMm,
                }
            );
        return (probability, deciding.MarginMm(u));
    }

    /// <summary>Positions that say something: read and not left out, or treated right through.</summary>
    private static int Read(DepthProfile profile) =>
        profile.Faces.Sum(face => Enumerable.Range(0, face.DepthMm.Count).Count(i => face.KnownMm(i) is not null));

    /// <summary>A share of the zone must be reached on every face where it lies open.</summary>
    private static (ProbabilityRange Probability, Estimate? MarginMm) OnEveryFace(
        ZoneDemand demand,
        List<FaceZone> faces,
        DecisionRule decision,
        List<Reason> reasons
    )
    {
        var (low, high, worst) = (1.0, 1.0, 1.0);
        Estimate? marginMm = null;
        foreach (var face in faces.Where(face => face.Positions.Count > 0))
        {
            var (deciding, probability) = Deciding(face.Positions, demand.Coverage, 0);
            (low, high) = (low * probability.Low, Math.Min(high, probability.High));
            if (marginMm is null || probability.Low < worst)
                (worst, marginMm) = (probability.Low, deciding.MarginMm(deciding.StandardUncertaintyMm));
            var reached = face.Positions.Count(position => position.DepthMm >= position.RequiredMm);
            reasons.Add(
                new ReachedOnFace
                {
                    Rule = demand.Rule,
                    Face = face.Number,
                    ReachedShare = (double)reached / face.Positions.Count,
                    RequiredShare = demand.Coverage,
                    DepthMm = deciding.DepthMm,
                    StandardUncertaintyMm = deciding.StandardUncertaintyMm,
                    Probability = probability,
                }
            );
            if (decision.Decide(probability.Low) == Verdict.Undecided && deciding.StandardUncertaintyMm > 0)
                reasons.Add(GuardBandAbout(deciding, deciding.StandardUncertaintyMm, decision));
        }
        return (ProbabilityRange.Between(low, high), marginMm);
    }

    /// <summary>
    /// The position on which a coverage turns, the probability there, and the probability if every position whose zone is
    /// unknown were to be satisfied.
    /// </summary>
    private static (DepthAtPosition Deciding, ProbabilityRange Probability) Deciding(
        List<DepthAtPosition> positions,
        double coverage,
        double leastUncertaintyMm
    )
    {
        // The share is of a count of positions; the small number keeps 0.75 × 100 from becoming 76.
        var needed = Math.Max(1, (int)Math.Ceiling(coverage * positions.Count - 1e-9));
        var ranked = positions
            .Select(position => (Position: position, Probability: position.Probability(leastUncertaintyMm)))
            .OrderByDescending(entry => entry.Probability)
            .ThenByDescending(entry => entry.Position.DepthMm - entry.Position.RequiredMm)
            .ToList();
        var unknown = positions.Count(position => !position.InZone);
        var known = ranked.Where(entry => entry.Position.InZone).ToList();
        var high = needed <= unknown ? 1 : known[needed - unknown - 1].Probability;
        var (deciding, low) = ranked[needed - 1];
        return (deciding, new(low, Math.Max(low, high)));
    }

    private static FaceZone Zone(FaceProfile face, ZoneDemand demand, Section section)
    {
        var middleMm = MiddleMm(section, face.Number);
        List<DepthAtPosition> positions = [];
        var found = 0;
        for (var i = 0; i < face.PositionsMm.Count; i++)
        {
            var sapwoodMm = face.SapwoodDepthMm[i];
            var inZone = demand.Zone switch
            {
                WoodZone.Lateral => true,
                WoodZone.Sapwood => sapwoodMm > 0,
                WoodZone.ExposedHeartwood => sapwoodMm <= 0,
                _ => throw new ArgumentOutOfRangeException(nameof(demand), demand.Zone, "Not a zone."),
            };
            if (!inZone && sapwoodMm is not null)
                continue;
            found++;
            if (face.KnownMm(i) is not { } depthMm)
                continue;
            var endMm =
                inZone && demand.Zone == WoodZone.Sapwood ? Math.Min(sapwoodMm ?? middleMm, middleMm) : middleMm;
            // What is required moves with the border of the sapwood, where it ends there.
            var borderMm = endMm < middleMm ? face.SapwoodUncertaintyMm : 0;
            var requiredU =
                (demand.RequiredMm(endMm + borderMm) - demand.RequiredMm(Math.Max(0, endMm - borderMm))) / 2;
            positions.Add(
                new(
                    face.Number,
                    face.PositionsMm[i],
                    depthMm,
                    double.Hypot(face.StandardUncertaintyMm[i], requiredU),
                    demand.RequiredMm(endMm),
                    endMm,
                    inZone
                )
            );
        }
        return new(face.Number, found, positions);
    }

    /// <summary>Depth from a face to the middle of the section: no front need go farther, mm.</summary>
    private static double MiddleMm(Section section, int face) =>
        section switch
        {
            RectangularSection sawn => (face % 2 == 1 ? sawn.HeightMm : sawn.WidthMm) / 2,
            // Fronts from the flat and from the round meet half-way between them.
            RoundSection or HalfRoundSection or QuarteredSection => section.ThicknessMm / 2,
            _ => throw new ArgumentOutOfRangeException(nameof(section), section, "Not a section."),
        };

    private static GuardBand GuardBandAbout(DepthAtPosition deciding, double u, DecisionRule decision) =>
        new(
            deciding.DepthMm,
            deciding.RequiredMm,
            u,
            deciding.RequiredMm + Normal.InvCDF(0, 1, Math.Min(decision.ConformsFrom, 1 - 1e-12)) * u,
            deciding.RequiredMm + Normal.InvCDF(0, 1, Math.Max(decision.FailsUpTo, 1e-12)) * u
        );

    /// <summary>What was measured, how sure one must be, and which depth stands for a whole zone.</summary>
    private sealed record Evidence(DepthProfile Profile, DecisionRule Decision, DepthReading Reading);

    /// <summary>A depth in one zone: what is required where the zone ends at a given depth, mm, over which share of each face.</summary>
    private sealed record ZoneDemand(DepthRule Rule, WoodZone Zone, double Coverage, Func<double, double> RequiredMm);

    private sealed record FaceZone(int Number, int Found, List<DepthAtPosition> Positions)
    {
        public bool IsUnread => Found > 0 && Positions.Count < LeastShareRead * Found;
    }
}
