using Alburnum.Measures;

namespace Alburnum.Impregnation.Prediction;

/// <summary>What a plant measured of one of its woods.</summary>
/// <param name="Charges">Every charge, oldest first.</param>
/// <param name="Depths">Depths.</param>
/// <param name="OfCharges">What was read of whole charges, at most one of each kind of a charge.</param>
public sealed record PlantEvidence(
    IReadOnlyList<string> Charges,
    IReadOnlyList<PlantDepth> Depths,
    IReadOnlyList<ChargeEvidence> OfCharges
);

/// <summary>Evidence that no one wood can have given.</summary>
/// <param name="Kind">The kind that contradicts those trusted before it, and was left out.</param>
/// <param name="ByTrusted">The law by the kinds trusted before it.</param>
/// <param name="KindMedianM2">Median permeability by this kind alone, m².</param>
public sealed record EvidenceConflict(PlantEvidenceKind Kind, PermeabilityLaw ByTrusted, double KindMedianM2);

/// <summary>A charge in which nothing penetrated, where that was foretold to happen in fewer than one of twenty: no spread of one wood explains it.</summary>
/// <param name="Charge">The charge.</param>
/// <param name="ForetoldLeastMm">Mean depth that nineteen of twenty such charges should have passed, mm.</param>
public sealed record UntakenCharge(string Charge, double ForetoldLeastMm);

/// <summary>A permeability law calibrated by a plant's own charges, and how its forecasts came out.</summary>
/// <param name="Fit">The law before and after.</param>
/// <param name="Conflicts">Each kind of evidence that contradicts those trusted before it, and was left out.</param>
/// <param name="DepthsMm">Mean depth of each charge as foretold from those before it, mm; null with fewer than two charges of depths.</param>
/// <param name="UptakesLPerM3">Uptake of each charge as foretold from those before it, L/m³; null likewise.</param>
public sealed record PlantCalibration(
    PermeabilityFit Fit,
    IReadOnlyList<EvidenceConflict> Conflicts,
    ForecastRecord? DepthsMm,
    ForecastRecord? UptakesLPerM3
)
{
    /// <summary>
    /// Charges in which nothing penetrated and that were left out: counted in, they would widen the spread of the wood upwards as well as down, and so promise
    /// depths that no charge ever had.
    /// </summary>
    public IReadOnlyList<UntakenCharge> Untaken { get; init; } = [];

    // Two answers lie apart where their difference exceeds so many of its standard deviations: one pair in twenty-two by chance.
    private const double Apart = 2;

    // Charges that seem to spread so many times as wide as was believed are no charges of such wood. Our own choice.
    private const double Wide = 1.5;

    // A record of forecasts fits its law anew when there are a tenth more charges, each time while they are few; a shorter chain will do.
    private const double Growth = 1.1;
    private const int Rounds = 800;
    private const int DrawnForecasts = 999;

    /// <summary>Calibrates.</summary>
    /// <param name="before">The law believed so far.</param>
    /// <param name="evidence">What the plant measured; one reading or more.</param>
    /// <param name="seed">Seed of the draws: the same seed gives the same answer.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="InputRefusedException">What was measured lies so far from what was believed that no timber spreads so wide.</exception>
    public static PlantCalibration Of(
        PermeabilityLaw before,
        PlantEvidence evidence,
        int seed,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(evidence);
        var untaken = Untook(before, evidence, seed, cancellation);
        bool IsTaken(string charge) => !untaken.Any(left => left.Charge == charge);
        var points = evidence.Depths.Where(depth => IsTaken(depth.Charge)).Select(depth => depth.Point()).ToList();
        var (trusted, conflicts) = Trusted(
            before,
            points,
            [.. evidence.OfCharges.Where(read => IsTaken(read.Charge))],
            seed,
            cancellation
        );
        var fit = PermeabilityFit.Of(before, points, seed, evidence: trusted, cancellation: cancellation);
        var (depths, taken) = Forecasts(before, evidence with { OfCharges = trusted }, points, seed, cancellation);
        return new(fit, conflicts, depths, taken) { Untaken = untaken };
    }

    private static IReadOnlyList<UntakenCharge> Untook(
        PermeabilityLaw before,
        PlantEvidence evidence,
        int seed,
        CancellationToken cancellation
    )
    {
        var charges = evidence.Depths.GroupBy(depth => depth.Charge, StringComparer.Ordinal).ToList();
        var bare = charges.Where(charge => charge.All(depth => depth.DepthMm <= 0)).ToList();
        if (bare.Count == 0 || bare.Count == charges.Count)
            return [];
        var law = PermeabilityFit
            .Of(
                before,
                [.. charges.Except(bare).SelectMany(charge => charge).Select(depth => depth.Point())],
                seed,
                Rounds,
                cancellation: cancellation
            )
            .After;
        var random = new SeededRandom(seed);
        return
        [
            .. bare.Select(charge => new UntakenCharge(
                    charge.Key,
                    OfDepths(law, charge.Key, [.. charge], random).Foretold.Low
                ))
                .Where(charge => charge.ForetoldLeastMm > 0),
        ];
    }

    // Kind by kind, in the order in which they are trusted: what lies apart from all before it is left out, and not averaged.
    private static (IReadOnlyList<ChargeEvidence> Trusted, IReadOnlyList<EvidenceConflict> Conflicts) Trusted(
        PermeabilityLaw before,
        IReadOnlyList<FitPoint> points,
        IReadOnlyList<ChargeEvidence> ofCharges,
        int seed,
        CancellationToken cancellation
    )
    {
        List<ChargeEvidence> trusted = [];
        List<EvidenceConflict> conflicts = [];
        foreach (var kind in ofCharges.GroupBy(read => read.Kind).OrderBy(kind => kind.Key))
        {
            if (points.Count + trusted.Count > 0)
            {
                var bySoFar = PermeabilityFit.Of(before, points, seed, Rounds, trusted, cancellation);
                var byKind = Alone(before, [.. kind], seed, cancellation);
                if (AreApart(bySoFar.LnMedian, byKind))
                {
                    conflicts.Add(new(kind.Key, bySoFar.After, Math.Exp(byKind.Value)));
                    continue;
                }
            }
            trusted.AddRange(kind);
        }
        return (trusted, conflicts);
    }

    // What a kind of evidence says by itself. Far from what was believed, its charges seem to spread ever wider, and in the end it would contradict nothing:
    // then it is asked as if next to nothing had been believed, and held for as sure as that belief.
    private static Estimate Alone(
        PermeabilityLaw before,
        IReadOnlyList<ChargeEvidence> kind,
        int seed,
        CancellationToken cancellation
    )
    {
        var (median, spread) = PermeabilityFit.ByCharges(before, kind, seed, Rounds, cancellation);
        if (spread <= Wide * before.BatchLnSpread)
            return median;
        var open = before with { BatchLnSpread = PermeabilityLaw.MostLnSpread };
        var (alone, _) = PermeabilityFit.ByCharges(open, kind, seed, Rounds, cancellation);
        return new(alone.Value, before.BatchLnSpread);
    }

    private static bool AreApart(Estimate one, Estimate other) =>
        Math.Abs(one.Value - other.Value) > Apart * double.Hypot(one.StandardUncertainty, other.StandardUncertainty);

    private static (ForecastRecord? Depths, ForecastRecord? Uptakes) Forecasts(
        PermeabilityLaw before,
        PlantEvidence evidence,
        IReadOnlyList<FitPoint> points,
        int seed,
        CancellationToken cancellation
    )
    {
        var (depthsOf, readOf) = (
            evidence.Depths.ToLookup(depth => depth.Charge, StringComparer.Ordinal),
            evidence.OfCharges.ToLookup(read => read.Charge, StringComparer.Ordinal)
        );
        var counted = points.Select(point => point.Charge).ToHashSet(StringComparer.Ordinal);
        HashSet<string> known = new(StringComparer.Ordinal);
        List<ChargeForecast> depths = [],
            uptakes = [];
        var random = new SeededRandom(seed);
        PermeabilityFit? fit = null;
        foreach (var charge in evidence.Charges.Where(charge => depthsOf.Contains(charge) || readOf.Contains(charge)))
        {
            if (known.Count > 0 && known.Count >= (fit?.Charges ?? 0) * (known.Count < 20 ? 1 : Growth))
                fit = PermeabilityFit.Of(
                    before,
                    [.. points.Where(point => known.Contains(point.Charge))],
                    seed,
                    Rounds,
                    [.. evidence.OfCharges.Where(read => known.Contains(read.Charge))],
                    cancellation
                );
            if (fit is not null && depthsOf.Contains(charge))
                depths.Add(OfDepths(fit.After, charge, [.. depthsOf[charge]], random));
            if (fit is not null && readOf[charge].OfType<PlantUptake>().FirstOrDefault() is { } uptake)
                uptakes.Add(OfUptake(fit, uptake, random));
            // What was left out is foretold as well, and teaches nothing.
            if (counted.Contains(charge) || readOf.Contains(charge))
                known.Add(charge);
        }
        return (depths.Count > 0 ? new(depths) : null, uptakes.Count > 0 ? new(uptakes) : null);
    }

    private static ChargeForecast OfDepths(
        PermeabilityLaw law,
        string charge,
        IReadOnlyList<PlantDepth> depths,
        SeededRandom random
    )
    {
        var pieces = depths
            .GroupBy(depth => depth.Piece, StringComparer.Ordinal)
            .Select(piece => piece.ToList())
            .ToList();
        var drawn = new double[DrawnForecasts];
        for (var n = 0; n < DrawnForecasts; n++)
        {
            var ofCharge = law.LateralMedianM2 * Math.Exp(law.BatchLnSpread * random.NextNormal());
            foreach (var piece in pieces)
            {
                var ofPiece = ofCharge * Math.Exp(law.PieceLnSpread * random.NextNormal());
                foreach (var depth in piece)
                    drawn[n] += depth.Foretold(ofPiece * Math.Exp(law.WithinLnSpread * random.NextNormal()));
            }
            drawn[n] /= depths.Count;
        }
        return ChargeForecast.Of(charge, depths.Average(depth => depth.DepthMm), drawn);
    }

    private static ChargeForecast OfUptake(PermeabilityFit fit, PlantUptake uptake, SeededRandom random)
    {
        var drawn = new double[DrawnForecasts];
        for (var n = 0; n < DrawnForecasts; n++)
        {
            var plant = fit.Plants[(int)random.Below((ulong)fit.Plants.Count)];
            var (ln, variance) = uptake.Curve.At(plant.LnMedianM2 + plant.BatchLnSpread * random.NextNormal());
            drawn[n] = Math.Exp(ln + plant.LnUptakeFactor + Math.Sqrt(variance) * random.NextNormal());
        }
        return ChargeForecast.Of(uptake.Charge, uptake.LPerM3, drawn);
    }
}
