namespace Alburnum.Acceptance;

/// <summary>Cut a first sample; cut a second one only where the first does not decide.</summary>
public sealed record DoubleSamplingPlan : SamplingPlan
{
    /// <summary>Checks that the numbers fit together.</summary>
    /// <param name="firstSample">Pieces in the first sample, 1 or more.</param>
    /// <param name="acceptFirst">Failures in the first sample that still accept at once, 0 or more.</param>
    /// <param name="rejectFirst">Failures in the first sample that reject at once; at least two above <paramref name="acceptFirst"/>.</param>
    /// <param name="secondSample">Pieces in the second sample, 1 or more.</param>
    /// <param name="acceptBoth">Failures in both samples together that still accept; at least <paramref name="acceptFirst"/>.</param>
    public DoubleSamplingPlan(int firstSample, int acceptFirst, int rejectFirst, int secondSample, int acceptBoth)
    {
        FirstSample = Require.InRange(firstSample, 1, 1_000_000, "pieces");
        AcceptFirst = Require.InRange(acceptFirst, 0, 1_000_000, "failures");
        RejectFirst = Require.InRange(rejectFirst, acceptFirst + 2, 1_000_002, "failures");
        SecondSample = Require.InRange(secondSample, 1, 1_000_000, "pieces");
        AcceptBoth = Require.InRange(acceptBoth, acceptFirst, 1_000_000, "failures");
    }

    /// <summary>Pieces in the first sample.</summary>
    public int FirstSample { get; }

    /// <summary>Failures in the first sample that still accept at once.</summary>
    public int AcceptFirst { get; }

    /// <summary>Failures in the first sample that reject at once.</summary>
    public int RejectFirst { get; }

    /// <summary>Pieces in the second sample.</summary>
    public int SecondSample { get; }

    /// <summary>Failures in both samples together that still accept.</summary>
    public int AcceptBoth { get; }

    /// <inheritdoc/>
    public override int MostPiecesCut => FirstSample + SecondSample;

    /// <inheritdoc/>
    public override double Acceptance(double failingShare, Supply supply)
    {
        var accepted = supply.AtMost(AcceptFirst, FirstSample, failingShare);
        for (var first = AcceptFirst + 1; first < RejectFirst; first++)
        {
            var probability = supply.Probability(first, FirstSample, failingShare);
            if (probability > 0)
                accepted += probability * SecondAccepts(first, failingShare, supply);
        }
        return Math.Min(1, accepted);
    }

    /// <inheritdoc/>
    public override double MeanPiecesCut(double failingShare, Supply supply) =>
        FirstSample
        + SecondSample
            * (
                supply.AtMost(RejectFirst - 1, FirstSample, failingShare)
                - supply.AtMost(AcceptFirst, FirstSample, failingShare)
            );

    private double SecondAccepts(int first, double failingShare, Supply supply)
    {
        if (first > AcceptBoth)
            return 0;
        // The second sample comes from what the first left of a lot.
        return supply is FiniteLot lot
            ? Hypergeometric.AtMost(
                AcceptBoth - first,
                lot.Pieces - FirstSample,
                lot.Failing(failingShare) - first,
                SecondSample
            )
            : supply.AtMost(AcceptBoth - first, SecondSample, failingShare);
    }
}
