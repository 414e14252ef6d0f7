using MathNet.Numerics.Distributions;

namespace Alburnum.Acceptance;

/// <summary>The two points that a plan is designed through.</summary>
public sealed record RiskPoints
{
    /// <summary>Checks that the points can be told apart.</summary>
    /// <param name="acceptableShare">Share of failing pieces that should be accepted, above 0.</param>
    /// <param name="producerRisk">Greatest probability of rejecting such a lot, above 0, below 0.5.</param>
    /// <param name="rejectableShare">Share of failing pieces that should be rejected; above the acceptable share, below 1.</param>
    /// <param name="consumerRisk">Greatest probability of accepting such a lot, above 0, below 0.5.</param>
    public RiskPoints(double acceptableShare, double producerRisk, double rejectableShare, double consumerRisk)
    {
        AcceptableShare = Require.InRange(acceptableShare, 1e-6, 1 - 1e-6, "(share)");
        ProducerRisk = Require.InRange(producerRisk, 1e-9, 0.5, "(probability)");
        RejectableShare = Require.InRange(rejectableShare, 1e-6, 1 - 1e-6, "(share)");
        ConsumerRisk = Require.InRange(consumerRisk, 1e-9, 0.5, "(probability)");
        if (rejectableShare <= acceptableShare)
            throw new ArgumentOutOfRangeException(
                nameof(rejectableShare),
                rejectableShare,
                "The share to reject must be above the share to accept."
            );
    }

    /// <summary>Share of failing pieces that should be accepted.</summary>
    public double AcceptableShare { get; }

    /// <summary>Greatest probability of rejecting a lot at the acceptable share.</summary>
    public double ProducerRisk { get; }

    /// <summary>Share of failing pieces that should be rejected.</summary>
    public double RejectableShare { get; }

    /// <summary>Greatest probability of accepting a lot at the rejectable share.</summary>
    public double ConsumerRisk { get; }

    /// <summary>About how many pieces of a steady process a single plan needs to tell the two shares apart.</summary>
    /// <remarks>The normal approximation of the binomial, ((z₁·√(p₁q₁) + z₂·√(p₂q₂))/(p₂ − p₁))²; common practice.</remarks>
    public double ApproximatePieces
    {
        get
        {
            var spread =
                Normal.InvCDF(0, 1, 1 - ProducerRisk) * Math.Sqrt(AcceptableShare * (1 - AcceptableShare))
                + Normal.InvCDF(0, 1, 1 - ConsumerRisk) * Math.Sqrt(RejectableShare * (1 - RejectableShare));
            var apart = spread / (RejectableShare - AcceptableShare);
            return apart * apart;
        }
    }
}
