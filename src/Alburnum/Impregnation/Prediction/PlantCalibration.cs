using Alburnum.Measures;

namespace Alburnum.Impregnation.Prediction;

/// <summary>What a plant measured of one of its woods.</summary>
/// <param name="Charges">Every charge, oldest first.</param>
/// <param name="Depths">Depths.</param>
/// <param name="Uptakes">Net uptakes, one of a charge at most.</param>
public sealed record PlantEvidence(
    IReadOnlyList<string> Charges,
    IReadOnlyList<PlantDepth> Depths,
    IReadOnlyList<PlantUptake> Uptakes
);

/// <summary>Depths and uptakes that no one wood can have given.</summary>
/// <param name="ByDepths">The law by the depths alone.</param>
/// <param name="ByUptakes">The law by the uptakes alone.</param>
public sealed record UptakeConflict(PermeabilityLaw ByDepths, PermeabilityLaw ByUptakes);

/// <summary>A permeability law calibrated by a plant's own charges, and how its forecasts came out.</summary>
/// <param name="Fit">The law before and after.</param>
/// <param name="Conflict">Where depths and uptakes contradict each other: what each says. The law then rests on the depths alone. Null where they do not.</param>
/// <param name="DepthsMm">Mean depth of each charge as foretold from those before it, mm; null with fewer than two charges of depths.</param>
/// <param name="UptakesLPerM3">Uptake of each charge as foretold from those before it, L/m³; null likewise.</param>
public sealed record PlantCalibration(
    PermeabilityFit Fit,
    UptakeConflict? Conflict,
    ForecastRecord? DepthsMm,
    ForecastRecord? UptakesLPerM3
)
{
    // Two answers lie apart where their difference exceeds so many of its standard deviations: one pair in twenty-two by chance.
    private const double Apart = 2;

    // A record of forecasts fits its law anew when there are a tenth more charges, each time while they are few; a shorter chain will do.
    private const double Growth = 1.1;
    private const int Rounds = 800;
    private const int DrawnForecasts = 999;

    /// <summary>Calibrates.</summary>
    /// <param name="before">The law believed so far.</param>
    /// <param name="evidence">What the plant measured; one depth or uptake or more.</param>
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
        var points = evidence.Depths.Select(depth => depth.Point()).ToList();
        var conflict = ConflictOf(before, points, evidence.Uptakes, seed, cancellation);
        var uptakes = conflict is null ? evidence.Uptakes : [];
        var fit = PermeabilityFit.Of(before, points, seed, uptakes: uptakes, cancellation: cancellation);
        var (depths, taken) = Forecasts(before, evidence with { Uptakes = uptakes }, points, seed, cancellation);
        return new(fit, conflict, depths, taken);
    }

    private static UptakeConflict? ConflictOf(
        PermeabilityLaw before,
        IReadOnlyList<FitPoint> points,
        IReadOnlyList<PlantUptake> uptakes,
        int seed,
        CancellationToken cancellation
    )
    {
        if (points.Count == 0 || uptakes.Count == 0)
            return null;
        var byDepths = PermeabilityFit.Of(before, points, seed, Rounds, cancellation: cancellation);
        var byUptakes = PermeabilityFit.Of(before, [], seed, Rounds, uptakes, cancellation);
        var apart = Math.Abs(byDepths.LnMedian.Value - byUptakes.LnMedian.Value);
        return
            apart > Apart * double.Hypot(byDepths.LnMedian.StandardUncertainty, byUptakes.LnMedian.StandardUncertainty)
            ? new(byDepths.After, byUptakes.After)
            : null;
    }

    private static (ForecastRecord? Depths, ForecastRecord? Uptakes) Forecasts(
        PermeabilityLaw before,
        PlantEvidence evidence,
        IReadOnlyList<FitPoint> points,
        int seed,
        CancellationToken cancellation
    )
    {
        var (depthsOf, uptakeOf) = (
            evidence.Depths.ToLookup(depth => depth.Charge, StringComparer.Ordinal),
            evidence.Uptakes.ToDictionary(uptake => uptake.Charge, StringComparer.Ordinal)
        );
        HashSet<string> known = new(StringComparer.Ordinal);
        List<ChargeForecast> depths = [],
            uptakes = [];
        var random = new SeededRandom(seed);
        PermeabilityFit? fit = null;
        foreach (
            var charge in evidence.Charges.Where(charge => depthsOf.Contains(charge) || uptakeOf.ContainsKey(charge))
        )
        {
            if (known.Count > 0 && known.Count >= (fit?.Charges ?? 0) * (known.Count < 20 ? 1 : Growth))
                fit = PermeabilityFit.Of(
                    before,
                    [.. points.Where(point => known.Contains(point.Charge))],
                    seed,
                    Rounds,
                    [.. evidence.Uptakes.Where(uptake => known.Contains(uptake.Charge))],
                    cancellation
                );
            if (fit is not null && depthsOf.Contains(charge))
                depths.Add(OfDepths(fit.After, charge, [.. depthsOf[charge]], random));
            if (fit is not null && uptakeOf.TryGetValue(charge, out var uptake))
                uptakes.Add(OfUptake(fit, uptake, random));
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
