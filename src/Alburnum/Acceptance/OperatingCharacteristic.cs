namespace Alburnum.Acceptance;

/// <summary>One point of an operating characteristic.</summary>
/// <param name="FailingShare">True share of failing pieces, 0 to 1.</param>
/// <param name="Acceptance">Probability that the plan accepts.</param>
/// <param name="MeanPiecesCut">Average sample number there.</param>
public sealed record OcPoint(double FailingShare, double Acceptance, double MeanPiecesCut);

/// <summary>The share of failing pieces at which a plan accepts with some stated probabilities.</summary>
/// <param name="ProducerShare">Share accepted with 95 %.</param>
/// <param name="IndifferentShare">Share accepted with 50 %.</param>
/// <param name="ConsumerShare">Share accepted with 10 %: the limiting quality.</param>
public sealed record OcLandmarks(double ProducerShare, double IndifferentShare, double ConsumerShare);

/// <summary>Average outgoing quality limit: the worst share left after rejected lots are sorted piece by piece.</summary>
/// <param name="Limit">Greatest average share of failing pieces that leaves, 0 to 1.</param>
/// <param name="AtShare">Incoming share at which it occurs.</param>
public sealed record OutgoingQuality(double Limit, double AtShare);

/// <summary>How a plan behaves at every quality.</summary>
public static class OperatingCharacteristic
{
    private const int SearchSteps = 400;

    /// <summary>The curve at stated failing shares, each 0 to 1.</summary>
    public static IReadOnlyList<OcPoint> Curve(SamplingPlan plan, Supply supply, IReadOnlyList<double> shares) =>
        [
            .. shares.Select(share => new OcPoint(
                share,
                plan.Acceptance(share, supply),
                plan.MeanPiecesCut(share, supply)
            )),
        ];

    /// <summary>The shares accepted with 95, 50 and 10 %.</summary>
    public static OcLandmarks Landmarks(SamplingPlan plan, Supply supply) =>
        new(ShareAccepted(plan, supply, 0.95), ShareAccepted(plan, supply, 0.5), ShareAccepted(plan, supply, 0.1));

    /// <summary>Greatest share of failing pieces that is accepted with at least a given probability.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="supply">What the pieces come from.</param>
    /// <param name="probability">Probability of acceptance, above 0, below 1.</param>
    public static double ShareAccepted(SamplingPlan plan, Supply supply, double probability)
    {
        Require.InRange(probability, 1e-9, 1 - 1e-9, "(probability)");
        if (supply is FiniteLot lot)
            return (double)MostFailing(plan, lot, probability) / lot.Pieces;
        double low = 0,
            high = 1;
        if (plan.Acceptance(high, supply) >= probability)
            return 1;
        for (var i = 0; i < 60; i++)
        {
            var middle = (low + high) / 2;
            if (plan.Acceptance(middle, supply) >= probability)
                low = middle;
            else
                high = middle;
        }
        return (low + high) / 2;
    }

    /// <summary>Average outgoing quality limit where rejected lots are sorted and failing pieces made good.</summary>
    /// <param name="plan">A plan that cuts a fixed number of pieces.</param>
    /// <param name="lotSize">Pieces in the lot; null where the lot is endlessly larger than the sample.</param>
    /// <remarks>p·Pa(p)·(N − n)/N at its greatest, with the binomial characteristic.</remarks>
    public static OutgoingQuality OutgoingLimit(SingleSamplingPlan plan, int? lotSize)
    {
        var supply = new SteadyProcess();
        var uncut = lotSize is { } lot ? Math.Max(0, lot - plan.SampleSize) / (double)lot : 1;
        double Leaving(double share) => share * plan.Acceptance(share, supply) * uncut;
        // One hump: find the step that holds it, then narrow by thirds.
        var peak = Enumerable.Range(0, SearchSteps + 1).MaxBy(i => Leaving((double)i / SearchSteps));
        double low = Math.Max(0, peak - 1.0) / SearchSteps,
            high = Math.Min(SearchSteps, peak + 1.0) / SearchSteps;
        for (var i = 0; i < 80; i++)
        {
            double left = low + (high - low) / 3,
                right = high - (high - low) / 3;
            if (Leaving(left) < Leaving(right))
                low = left;
            else
                high = right;
        }
        return new(Leaving((low + high) / 2), (low + high) / 2);
    }

    private static int MostFailing(SamplingPlan plan, FiniteLot lot, double probability)
    {
        int low = 0,
            high = lot.Pieces;
        while (low < high)
        {
            var middle = low + (high - low + 1) / 2;
            if (plan.Acceptance((double)middle / lot.Pieces, lot) >= probability)
                low = middle;
            else
                high = middle - 1;
        }
        return low;
    }
}
