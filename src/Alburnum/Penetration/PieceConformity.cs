using Alburnum.Requirements;
using Alburnum.Timber;
using MathNet.Numerics.Distributions;
using static Alburnum.Figures;

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

    /// <summary>Judges a piece.</summary>
    /// <param name="rule">What is asked for.</param>
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
        var chance = Chance(rule, profile, decision, reading);
        if (!chance.Arises)
            return new(Verdict.Undecided, null, [.. chance.Reasons, "Not demonstrable on this piece."]);
        var (atLeast, atMost) = (decision.Decide(chance.Low), decision.Decide(chance.High));
        var verdict = atLeast == atMost ? atLeast : Verdict.Undecided;
        var undetermined = verdict == Verdict.Undecided && chance.EvidenceMissing && chance.Low < chance.High;
        return undetermined
            ? new(verdict, null, chance.Reasons)
            : new(verdict, (chance.Low + chance.High) / 2, chance.Reasons) { MarginMm = chance.MarginMm };
    }

    private static DemandChance Chance(
        DepthRule rule,
        DepthProfile profile,
        DecisionRule decision,
        DepthReading reading
    ) =>
        rule switch
        {
            NoDepth => new(1, 1, Arises: true, EvidenceMissing: false, ["No depth of penetration is asked for."]),
            LeastDepth least => Reach(
                least,
                least.Zone,
                least.Coverage,
                profile,
                decision,
                reading,
                end => Math.Min(least.DepthMm, end)
            ),
            ShareOfZone share => Reach(share, share.Zone, 1, profile, decision, reading, end => share.Share * end),
            AllOf all => DemandChance.All([.. all.Parts.Select(part => Chance(part, profile, decision, reading))]),
            AnyOf any => DemandChance.Any([.. any.Parts.Select(part => Chance(part, profile, decision, reading))]),
            UntreatedHeartwoodLimit limit => DemandChance.All([
                Chance(new ShareOfZone(WoodZone.Sapwood, 1), profile, decision, reading),
                UntreatedCore.Within(limit, profile),
            ]),
            _ => throw new ArgumentOutOfRangeException(nameof(rule), rule, "Not a depth rule."),
        };

    private static DemandChance Reach(
        DepthRule rule,
        WoodZone zone,
        double coverage,
        DepthProfile profile,
        DecisionRule decision,
        DepthReading reading,
        Func<double, double> required
    )
    {
        var faces = profile.Faces.Select(face => Zone(face, zone, profile.Section, required)).ToList();
        var positions = faces.SelectMany(face => face.Positions).ToList();
        var name = Capital(rule.InWords);
        if (faces.Sum(face => face.Found) == 0)
            return new(0, 1, Arises: false, EvidenceMissing: true, [$"{name}: {Absent(zone)}."]);
        if (positions.Count == 0)
            return new(0, 1, Arises: true, EvidenceMissing: true, [$"{name}: no position could be read."]);

        List<string> reasons = [];
        var (low, high, marginMm) =
            coverage < 1
                ? OnEveryFace(name, coverage, faces, decision, reasons)
                : Throughout(name, reading, positions, profile, decision, reasons);

        var unread = faces.Where(face => face.IsUnread).Select(face => face.Number).ToList();
        if (unread.Count > 0)
        {
            low = 0;
            reasons.Add(
                $"Less than half of face {string.Join(", ", unread)} could be read there: it cannot count as reached."
            );
        }
        var boundaryMissing = positions.Any(position => !position.InZone);
        if (boundaryMissing && decision.Decide(low) != decision.Decide(high))
            reasons.Add("The sapwood boundary is not stated, and the depth read does not decide without it.");
        return new(low, high, Arises: true, boundaryMissing || unread.Count > 0, reasons) { MarginMm = marginMm };
    }

    /// <summary>The whole zone must be reached: one order statistic over all faces.</summary>
    private static (double Low, double High, Estimate? MarginMm) Throughout(
        string name,
        DepthReading reading,
        List<DepthAtPosition> positions,
        DepthProfile profile,
        DecisionRule decision,
        List<string> reasons
    )
    {
        var coverage = reading == DepthReading.Minimum ? 1 : PercentileCoverage;
        var statistic =
            reading == DepthReading.Minimum ? profile.Statistics.MinimumMm : profile.Statistics.FifthPercentileMm;
        var (deciding, low, high) = Deciding(positions, coverage, statistic.StandardUncertainty);
        var u = Math.Max(deciding.StandardUncertaintyMm, statistic.StandardUncertainty);
        var least = positions.Min(position => position.DepthMm);
        // Where the least depth was read well and another badly, the verdict turns on the badly read one: say both.
        var turnsElsewhere = reading == DepthReading.Minimum && deciding.DepthMm > least;
        reasons.Add(
            $"{name}: {reading.InWords()} of {Counted(positions.Count, "position")} "
                + (turnsElsewhere ? $"{Mm(least)}, the least sure one " : "")
                + $"{Mm(deciding.DepthMm)} where "
                + $"{Mm(deciding.RequiredMm)} is asked for (face {deciding.Face}, {Mm(deciding.PositionMm)} along), "
                + $"standard uncertainty {Mm(u)}; met with probability {Certainty(low)}."
        );
        if (!deciding.AsksForWholeZone && u > 0)
            reasons.Add(GuardBand(deciding.RequiredMm, u, decision));
        return (low, high, deciding.MarginMm(u));
    }

    /// <summary>A share of the zone must be reached on every face where it lies open.</summary>
    private static (double Low, double High, Estimate? MarginMm) OnEveryFace(
        string name,
        double coverage,
        List<FaceZone> faces,
        DecisionRule decision,
        List<string> reasons
    )
    {
        var (low, high, worst) = (1.0, 1.0, 1.0);
        Estimate? marginMm = null;
        foreach (var face in faces.Where(face => face.Positions.Count > 0))
        {
            var (deciding, faceLow, faceHigh) = Deciding(face.Positions, coverage, 0);
            (low, high) = (low * faceLow, Math.Min(high, faceHigh));
            if (marginMm is null || faceLow < worst)
                (worst, marginMm) = (faceLow, deciding.MarginMm(deciding.StandardUncertaintyMm));
            var reached = face.Positions.Count(position => position.DepthMm >= position.RequiredMm);
            reasons.Add(
                $"{name}: {Percent((double)reached / face.Positions.Count)} of it reached on face {face.Number}, "
                    + $"{Percent(coverage)} asked for; that share is {Mm(deciding.DepthMm)} deep or deeper, "
                    + $"standard uncertainty {Mm(deciding.StandardUncertaintyMm)}; met with probability {Certainty(faceLow)}."
            );
            if (decision.Decide(faceLow) == Verdict.Undecided && deciding.StandardUncertaintyMm > 0)
                reasons.Add(GuardBand(deciding.RequiredMm, deciding.StandardUncertaintyMm, decision));
        }
        return (low, high, marginMm);
    }

    /// <summary>
    /// The position on which a coverage turns, the probability there, and the probability if every position whose zone is
    /// unknown were to be satisfied.
    /// </summary>
    private static (DepthAtPosition Deciding, double Low, double High) Deciding(
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
        return (deciding, low, Math.Max(low, high));
    }

    private static FaceZone Zone(FaceProfile face, WoodZone zone, Section section, Func<double, double> required)
    {
        var middleMm = MiddleMm(section, face.Number);
        List<DepthAtPosition> positions = [];
        var found = 0;
        for (var i = 0; i < face.PositionsMm.Count; i++)
        {
            var sapwoodMm = face.SapwoodDepthMm[i];
            var inZone = zone switch
            {
                WoodZone.Lateral => true,
                WoodZone.Sapwood => sapwoodMm > 0,
                WoodZone.ExposedHeartwood => sapwoodMm <= 0,
                _ => throw new ArgumentOutOfRangeException(nameof(zone), zone, "Not a zone."),
            };
            if (!inZone && sapwoodMm is not null)
                continue;
            found++;
            if (face.Excluded[i])
                continue;
            var endMm = inZone && zone == WoodZone.Sapwood ? Math.Min(sapwoodMm ?? middleMm, middleMm) : middleMm;
            // What is asked for moves with the border of the sapwood, where it ends there.
            var borderMm = endMm < middleMm ? face.SapwoodUncertaintyMm : 0;
            var requiredU = (required(endMm + borderMm) - required(Math.Max(0, endMm - borderMm))) / 2;
            positions.Add(
                new(
                    face.Number,
                    face.PositionsMm[i],
                    face.DepthMm[i],
                    double.Hypot(face.StandardUncertaintyMm[i], requiredU),
                    required(endMm),
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

    private static string GuardBand(double requiredMm, double u, DecisionRule decision)
    {
        var above = Normal.InvCDF(0, 1, Math.Min(decision.ConformsFrom, 1 - 1e-12)) * u;
        var below = -Normal.InvCDF(0, 1, Math.Max(decision.FailsUpTo, 1e-12)) * u;
        return $"Guard band: conforms from {Mm(requiredMm + above)}, does not conform up to {Mm(requiredMm - below)}.";
    }

    private static string Absent(WoodZone zone) =>
        zone == WoodZone.ExposedHeartwood
            ? "no heartwood lies open on this piece"
            : "no sapwood is present on this piece";

    private static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];

    private sealed record FaceZone(int Number, int Found, List<DepthAtPosition> Positions)
    {
        public bool IsUnread => Found > 0 && Positions.Count < LeastShareRead * Found;
    }
}
