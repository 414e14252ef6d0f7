using Alburnum.Measures;

namespace Alburnum.Impregnation.Prediction;

/// <summary>Net uptake that is expected of a charge, by the median permeability of its wood.</summary>
public sealed class UptakeCurve
{
    /// <summary>Standard uncertainty of an uptake as a share of it, because how air and solution hinder each other is assumed: kept shares of sapwood move by about so much where radius of the cavities, exponents and trapped air are varied as far as they may be (docs/science/flow.md). Common to all charges of a plant.</summary>
    public const double AssumedLaws = 0.12;

    // Tank readings, and which pieces a charge happens to hold. Our own choice.
    private const double OneCharge = 0.05;
    private const double LeastLn = -47;
    private const double MostLn = -22;
    private const double Step = 0.5;
    private const int Nodes = (int)((MostLn - LeastLn) / Step) + 1;
    private const int Pieces = 60;
    private const int PlacesPerFace = 3;
    private const double LeastLPerM3 = 0.1;
    private readonly Func<double, (double Ln, double Variance)> _at;

    /// <summary>A curve that is known.</summary>
    /// <param name="at">Logarithm of the uptake expected, L/m³, and the variance about it of one charge, from the logarithm of the median permeability, m².</param>
    public UptakeCurve(Func<double, (double Ln, double Variance)> at) => _at = at;

    /// <summary>The curve of a charge.</summary>
    /// <param name="charge">The charge's pieces, schedule and moisture; its laws are those believed at that moisture.</param>
    /// <param name="front">The table of its schedule, solution and moisture.</param>
    /// <param name="isHeartwood">The wood whose permeability is sought; what is not known of the other adds to the uncertainty.</param>
    /// <param name="permeabilityRatio">Permeability at the charge's moisture over that at the moisture asked about. Above 0.</param>
    public static UptakeCurve Of(
        PredictionQuestion charge,
        FrontTable front,
        bool isHeartwood,
        double permeabilityRatio
    )
    {
        ArgumentNullException.ThrowIfNull(charge);
        var lnRatio = Math.Log(Require.Positive(permeabilityRatio, "(ratio)"));
        var (own, other) = isHeartwood ? (charge.Heartwood, charge.Sapwood) : (charge.Sapwood, charge.Heartwood);
        var spread = Math.Exp(other.BatchLnSpread);
        var (ln, variance) = (new double[Nodes], new double[Nodes]);
        for (var i = 0; i < Nodes; i++)
        {
            var median = Math.Clamp(Math.Exp(LeastLn + i * Step), 1e-24, 1e-10);
            ln[i] = LnMean(median, 1);
            var gap = (LnMean(median, spread) - LnMean(median, 1 / spread)) / 2;
            variance[i] = OneCharge * OneCharge + gap * gap;
        }
        return new(lnM2 =>
        {
            var at = Math.Clamp((lnM2 + lnRatio - LeastLn) / Step, 0, Nodes - 1.001);
            var (i, between) = ((int)at, at - (int)at);
            return (ln[i] + between * (ln[i + 1] - ln[i]), variance[i] + between * (variance[i + 1] - variance[i]));
        });

        double LnMean(double medianM2, double otherTimes)
        {
            var (law, beside) = (own with { LateralMedianM2 = medianM2 }, other.Times(otherTimes));
            var question = isHeartwood
                ? charge with
                {
                    Sapwood = beside,
                    Heartwood = law,
                }
                : charge with
                {
                    Sapwood = law,
                    Heartwood = beside,
                };
            return Math.Log(Math.Max(LeastLPerM3, Mean(question, front)));
        }
    }

    /// <summary>Logarithm of the uptake expected, L/m³, and the variance about it of one charge, laws of flow apart.</summary>
    /// <param name="lnM2">Logarithm of the charge's median permeability at the moisture asked about, m².</param>
    public (double Ln, double Variance) At(double lnM2) => _at(lnM2);

    /// <summary>The same where the wood's cavities are so many times as large: permeability goes with them, so that only the room for solution differs.</summary>
    /// <param name="ratio">Above 0.</param>
    public UptakeCurve InVoids(double ratio)
    {
        var more = Math.Log(Require.Positive(ratio, "(ratio)"));
        return new(lnM2 =>
        {
            var (ln, variance) = _at(lnM2);
            return (ln + more, variance);
        });
    }

    private static double Mean(PredictionQuestion question, FrontTable front)
    {
        var treat = new PieceTreatment(question, front, product: null, PlacesPerFace);
        // The same pieces at every permeability: the curve is smooth.
        var random = new SeededRandom(Draws.Seed);
        double sum = 0;
        for (var n = 0; n < Pieces; n++)
            sum += treat.Next(random, 0, 0).UptakeLPerM3;
        return sum / Pieces;
    }
}
