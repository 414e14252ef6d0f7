namespace Alburnum.Acceptance;

/// <summary>Cut n pieces; accept the lot on at most the acceptance number of failures.</summary>
public sealed record SingleSamplingPlan : SamplingPlan
{
    /// <summary>Checks that the three numbers fit together.</summary>
    /// <param name="sampleSize">Pieces to cut, 1 or more.</param>
    /// <param name="acceptanceNumber">Greatest number of failures that accepts, 0 to the sample size.</param>
    /// <param name="rejectionNumber">
    /// Least number of failures that rejects; one above the acceptance number unless the plan leaves a gap (reduced inspection).
    /// </param>
    public SingleSamplingPlan(int sampleSize, int acceptanceNumber, int? rejectionNumber = null)
    {
        SampleSize = Require.InRange(sampleSize, 1, int.MaxValue, "pieces");
        AcceptanceNumber = Require.InRange(acceptanceNumber, 0, int.MaxValue - 1, "failures");
        RejectionNumber = Require.InRange(
            rejectionNumber ?? acceptanceNumber + 1,
            acceptanceNumber + 1,
            int.MaxValue,
            "failures"
        );
    }

    /// <summary>Pieces to cut.</summary>
    public int SampleSize { get; }

    /// <summary>Greatest number of failures (or defects) that accepts.</summary>
    public int AcceptanceNumber { get; }

    /// <summary>Least number of failures (or defects) that rejects.</summary>
    public int RejectionNumber { get; }

    /// <inheritdoc/>
    public override int MostPiecesCut => SampleSize;

    /// <inheritdoc/>
    /// <remarks>A count in the gap of a reduced plan accepts the lot (and ends reduced inspection).</remarks>
    public override double Acceptance(double failingShare, Supply supply) =>
        supply.AtMost(RejectionNumber - 1, SampleSize, failingShare);

    /// <inheritdoc/>
    public override double MeanPiecesCut(double failingShare, Supply supply) => SampleSize;
}
