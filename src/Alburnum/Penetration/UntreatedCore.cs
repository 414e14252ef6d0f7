using Alburnum.Requirements;
using Alburnum.Timber;
using MathNet.Numerics.Distributions;

namespace Alburnum.Penetration;

/// <summary>How large the untreated core of a section is, against a limit on untreated heartwood.</summary>
/// <remarks>
/// The core reaches across from the front behind one face to the front behind the opposite one. Its reach is taken at the place
/// where it is greatest, in each of the section's two directions; both directions must stay within both shares, because a rule's
/// wording does not say which side is meant. The two fronts' errors are added: one reading, one error.
/// </remarks>
internal static class UntreatedCore
{
    public static DemandChance Within(UntreatedHeartwoodLimit limit, DepthProfile profile)
    {
        var reaches = Reaches(profile);
        if (reaches.Count == 0)
            return DemandChance.Open(new OppositeFacesNeeded(limit));
        var untreated = new Estimate(1 - profile.TreatedShare.Value, profile.TreatedShare.StandardUncertainty);
        // The rule says "under", so a core exactly at the limit is over it.
        var area = Below(untreated, limit.AreaShare, mayTouch: false);
        var across = reaches.MaxBy(reach => reach.Value);
        var reach = Below(across, Math.Min(limit.ThroughShare, limit.SideShare), mayTouch: true);
        return DemandChance.All([
            Known(area, new UntreatedArea(limit, untreated, area)),
            Known(reach, new UntreatedReach(limit, across, reach)),
        ]);
    }

    private static DemandChance Known(double probability, Reason reason) =>
        new(ProbabilityRange.Exactly(probability), Arises: true, EvidenceMissing: false, [reason]);

    /// <summary>Greatest reach of the core as a share of the way across, in each direction that was read on both faces.</summary>
    private static List<Estimate> Reaches(DepthProfile profile)
    {
        List<Estimate> reaches = [];
        switch (profile.Section)
        {
            case RectangularSection sawn:
                Add(1, 3, sawn.HeightMm, positionMm => sawn.WidthMm - positionMm);
                Add(2, 4, sawn.WidthMm, positionMm => sawn.HeightMm - positionMm);
                // One direction read and the other not says nothing of the whole.
                return reaches.Count == 2 ? reaches : [];
            case RoundSection round:
                Add(1, 1, round.DiameterMm, positionMm => (positionMm + round.PerimeterMm / 2) % round.PerimeterMm);
                return reaches;
            // No face of these looks across at another of its kind: the way across is not read.
            case HalfRoundSection or QuarteredSection:
                return reaches;
            default:
                throw new ArgumentOutOfRangeException(nameof(profile), profile.Section, "Not a section.");
        }

        void Add(int face, int opposite, double acrossMm, Func<double, double> facing)
        {
            var (near, far) = (Read(profile, face), Read(profile, opposite));
            if (near.Count == 0 || far.Count == 0)
                return;
            reaches.Add(
                near.Select(here =>
                    {
                        var there = far.MinBy(reading => Math.Abs(reading.PositionMm - facing(here.PositionMm)));
                        return new Estimate(
                            Math.Max(0, acrossMm - here.DepthMm - there.DepthMm) / acrossMm,
                            (here.UMm + there.UMm) / acrossMm
                        );
                    })
                    .MaxBy(reach => reach.Value)
            );
        }
    }

    private static List<(double PositionMm, double DepthMm, double UMm)> Read(DepthProfile profile, int number) =>
        [
            .. profile
                .Faces.Where(face => face.Number == number)
                .SelectMany(face =>
                    Enumerable
                        .Range(0, face.PositionsMm.Count)
                        .Where(i => face.KnownMm(i) is not null)
                        .Select(i => (face.PositionsMm[i], face.KnownMm(i)!.Value, face.StandardUncertaintyMm[i]))
                ),
        ];

    private static double Below(Estimate value, double limit, bool mayTouch)
    {
        var margin = limit - value.Value;
        if (value.StandardUncertainty > 0)
            return Normal.CDF(0, 1, margin / value.StandardUncertainty);
        return margin > 0 || (mayTouch && margin >= 0) ? 1 : 0;
    }
}
