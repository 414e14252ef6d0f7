using MathNet.Numerics.Distributions;

namespace Alburnum.Acceptance.Variables;

/// <summary>Measure n pieces; accept where mean − k·s reaches the limit. Cuts fewer pieces than counting for the same risks.</summary>
/// <remarks>Exact for a normal population with unknown spread; a normal population is an assumption that has to be defended.</remarks>
public sealed record VariablesPlan : SamplingPlan
{
    private const int PiecesMax = 20_000;

    /// <summary>Checks both numbers.</summary>
    /// <param name="sampleSize">Pieces to measure, 2 to 20 000.</param>
    /// <param name="factor">Factor k on the sample's standard deviation, 0 or more.</param>
    public VariablesPlan(int sampleSize, double factor)
    {
        SampleSize = Require.InRange(sampleSize, 2, PiecesMax, "pieces");
        Factor = Require.InRange(factor, 0, 1000, "");
    }

    /// <summary>Pieces to measure.</summary>
    public int SampleSize { get; }

    /// <summary>Factor k on the sample's standard deviation.</summary>
    public double Factor { get; }

    /// <inheritdoc/>
    public override int MostPiecesCut => SampleSize;

    /// <summary>The smallest plan that meets both risks; null where more than 20 000 pieces would be needed.</summary>
    public static VariablesPlan? For(RiskPoints risks)
    {
        int low = 2,
            high = 2;
        while (!(Meets(high, risks)))
        {
            if (high == PiecesMax)
                return null;
            low = high + 1;
            high = Math.Min(PiecesMax, high * 2);
        }
        while (low < high)
        {
            var middle = (low + high) / 2;
            if (Meets(middle, risks))
                high = middle;
            else
                low = middle + 1;
        }
        return new(low, ConsumerFactor(low, risks));
    }

    /// <inheritdoc/>
    public override double Acceptance(double failingShare, Supply supply)
    {
        if (supply is not SteadyProcess)
            throw new ArgumentException("A plan by variables is for a steady process.", nameof(supply));
        if (failingShare <= 0)
            return 1;
        if (failingShare >= 1)
            return 0;
        var root = Math.Sqrt(SampleSize);
        return 1 - NonCentralT.AtMost(Factor * root, SampleSize - 1, Normal.InvCDF(0, 1, 1 - failingShare) * root);
    }

    /// <inheritdoc/>
    public override double MeanPiecesCut(double failingShare, Supply supply) => SampleSize;

    // The consumer is protected exactly; the producer is checked.
    private static bool Meets(int n, RiskPoints risks) =>
        ConsumerFactor(n, risks) is >= 0 and < 1000 and var k
        && new VariablesPlan(n, k).Acceptance(risks.AcceptableShare, new SteadyProcess()) >= 1 - risks.ProducerRisk;

    private static double ConsumerFactor(int n, RiskPoints risks)
    {
        var root = Math.Sqrt(n);
        return NonCentralT.Quantile(
                1 - risks.ConsumerRisk,
                n - 1,
                Normal.InvCDF(0, 1, 1 - risks.RejectableShare) * root
            ) / root;
    }
}
