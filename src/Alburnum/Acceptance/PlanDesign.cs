namespace Alburnum.Acceptance;

/// <summary>The plan that cuts the least wood for the risks asked for.</summary>
public static class PlanDesign
{
    // One in ten of ten pieces is a risk of 10 %, not a hair more.
    private const double RoundOff = 1e-9;

    /// <summary>NIST's rule of thumb: a sequential plan is cut off at three times the single plan's pieces.</summary>
    private const int SequentialCutOff = 3;

    /// <summary>The smallest single plan that meets both risks.</summary>
    /// <param name="risks">Quality to accept and quality to reject, with their risks.</param>
    /// <param name="lotSize">Pieces in the lot; null for a steady process.</param>
    /// <remarks>
    /// In a lot the acceptable share is rounded down and the rejectable share up to whole pieces, so neither risk is understated.
    /// The search raises the acceptance number until the least sample that protects the consumer still protects the producer.
    /// </remarks>
    public static SingleSamplingPlan Single(RiskPoints risks, int? lotSize = null)
    {
        var accept = Acceptance(risks.AcceptableShare, lotSize, roundUp: false);
        var reject = Acceptance(risks.RejectableShare, lotSize, roundUp: true);
        var most = lotSize ?? int.MaxValue / 4;
        var n = 1;
        for (var c = 0; ; c++)
        {
            n = LeastSample(size => reject(c, size) <= risks.ConsumerRisk, Math.Max(n, c + 1), most);
            if (accept(c, n) >= 1 - risks.ProducerRisk)
                return new(n, c);
        }
    }

    /// <summary>The double plan with two equal samples that cuts the fewest pieces on average at the acceptable share.</summary>
    /// <inheritdoc cref="Single"/>
    public static DoubleSamplingPlan Double(RiskPoints risks, int? lotSize = null)
    {
        var single = Single(risks, lotSize);
        Supply supply = lotSize is { } pieces ? new FiniteLot(pieces) : new SteadyProcess();
        var (p1, p2) = Shares(risks, lotSize);
        var most = lotSize / 2 ?? single.SampleSize * 2;
        DoubleSamplingPlan? best = null;
        var least = double.PositiveInfinity;
        for (var both = 1; both <= single.AcceptanceNumber + 3; both++)
        for (var first = 0; first < both; first++)
        {
            DoubleSamplingPlan Plan(int n) => new(n, first, both + 1, n, both);
            if (most < 1 || Plan(most).Acceptance(p2, supply) > risks.ConsumerRisk)
                continue;
            var plan = Plan(LeastSample(n => Plan(n).Acceptance(p2, supply) <= risks.ConsumerRisk, 1, most));
            if (plan.Acceptance(p1, supply) < 1 - risks.ProducerRisk)
                continue;
            var mean = plan.MeanPiecesCut(p1, supply);
            if (mean < least)
                (best, least) = (plan, mean);
        }
        return best
            ?? throw new ArgumentException("No double plan with equal samples meets these risks.", nameof(risks));
    }

    /// <summary>Wald's plan, cut off at three times the single plan's pieces or at the lot.</summary>
    /// <inheritdoc cref="Single"/>
    public static SequentialPlan Sequential(RiskPoints risks, int? lotSize = null) =>
        SequentialPlan.For(
            risks,
            Math.Min(SequentialCutOff * Single(risks, lotSize).SampleSize, lotSize ?? int.MaxValue)
        );

    /// <summary>Pieces to cut so that the lower confidence bound on the conforming share reaches a target.</summary>
    /// <param name="conformingShare">The share to be shown, above 0, below 1.</param>
    /// <param name="confidence">One-sided confidence, above 0, below 1.</param>
    /// <param name="failures">Failures that are to be borne, 0 or more.</param>
    /// <param name="lotSize">Pieces in the lot; null for a supply without end.</param>
    /// <returns>Pieces to cut; null where even cutting the whole lot cannot show it with so many failures.</returns>
    public static int? PiecesToShow(double conformingShare, double confidence, int failures, int? lotSize)
    {
        Require.InRange(conformingShare, 1e-6, 1 - 1e-6, "(share)");
        Require.InRange(failures, 0, int.MaxValue - 1, "failures");
        var most = lotSize ?? 1 << 24;
        bool Shows(int n) => LotShare.LowerBound(n - failures, n, lotSize, confidence) >= conformingShare;
        return failures >= most || !Shows(most) ? null : LeastSample(Shows, failures + 1, most);
    }

    /// <summary>The least sample of an isolated lot that accepts it at its limiting quality with no more than a stated risk.</summary>
    /// <param name="limitingShare">Failing share that is hardly ever to be accepted, above 0, below 1; in whole pieces, rounded up.</param>
    /// <param name="risk">Greatest probability of acceptance there, above 0, below 1.</param>
    /// <param name="failures">Acceptance number, 0 or more.</param>
    /// <param name="lotSize">Pieces in the lot.</param>
    /// <returns>The plan; null where even cutting the whole lot lets it pass.</returns>
    /// <remarks>Exact hypergeometric sums on this lot: no process stands behind it.</remarks>
    public static SingleSamplingPlan? Limiting(double limitingShare, double risk, int failures, int lotSize)
    {
        Require.InRange(limitingShare, 1e-6, 1 - 1e-6, "(share)");
        Require.InRange(risk, 1e-9, 1 - 1e-9, "(probability)");
        Require.InRange(failures, 0, int.MaxValue - 1, "failures");
        Require.InRange(lotSize, 1, int.MaxValue, "pieces");
        var failing = Failing(limitingShare, lotSize, roundUp: true);
        return failures >= failing
            ? null
            : new(
                LeastSample(
                    n => Hypergeometric.AtMost(failures, lotSize, failing, n) <= risk * (1 + RoundOff),
                    failures + 1,
                    lotSize
                ),
                failures
            );
    }

    private static Func<int, int, double> Acceptance(double share, int? lotSize, bool roundUp)
    {
        if (lotSize is not { } lot)
            return (c, n) => Binomial.AtMost(c, n, share);
        var failing = Failing(share, lot, roundUp);
        return (c, n) => Hypergeometric.AtMost(c, lot, failing, n);
    }

    private static (double Acceptable, double Rejectable) Shares(RiskPoints risks, int? lotSize) =>
        lotSize is { } lot
            ? (
                (double)Failing(risks.AcceptableShare, lot, roundUp: false) / lot,
                (double)Failing(risks.RejectableShare, lot, roundUp: true) / lot
            )
            : (risks.AcceptableShare, risks.RejectableShare);

    // The small number keeps 0.1 × 30 from becoming 2 or 4.
    private static int Failing(double share, int lot, bool roundUp) =>
        roundUp ? (int)Math.Ceiling(share * lot - 1e-9) : (int)Math.Floor(share * lot + 1e-9);

    /// <summary>Least sample from which on a claim holds: strides out, then halves.</summary>
    private static int LeastSample(Func<int, bool> holds, int from, int most)
    {
        var stride = 1;
        var low = from;
        var high = from;
        while (high < most && !holds(high))
        {
            low = high + 1;
            high = (int)Math.Min(most, (long)high + stride);
            stride *= 2;
        }
        while (low < high)
        {
            var middle = low + (high - low) / 2;
            if (holds(middle))
                high = middle;
            else
                low = middle + 1;
        }
        return low;
    }
}
