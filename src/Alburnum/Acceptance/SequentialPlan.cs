namespace Alburnum.Acceptance;

/// <summary>Cut one piece at a time until the count of failures crosses one of two parallel lines.</summary>
/// <remarks>
/// Wald's sequential probability ratio test (Wald 1947, "Sequential Analysis"), cut off at a last piece. The lines come from the
/// risks; the characteristic is not Wald's approximation but an exact walk over all counts, the cut-off included.
/// </remarks>
public sealed record SequentialPlan : SamplingPlan
{
    private SequentialPlan(double slope, double acceptIntercept, double rejectIntercept, int lastPiece)
    {
        Slope = slope;
        AcceptIntercept = acceptIntercept;
        RejectIntercept = rejectIntercept;
        LastPiece = lastPiece;
    }

    /// <summary>Failures per piece along both lines.</summary>
    public double Slope { get; }

    /// <summary>The acceptance line is Slope·n less this many failures.</summary>
    public double AcceptIntercept { get; }

    /// <summary>The rejection line is Slope·n and this many failures.</summary>
    public double RejectIntercept { get; }

    /// <summary>The piece at which the plan decides whatever the count: accepts up to Slope·n failures.</summary>
    public int LastPiece { get; }

    /// <inheritdoc/>
    public override int MostPiecesCut => LastPiece;

    /// <summary>The plan for two risk points.</summary>
    /// <param name="risks">Quality to accept and quality to reject, with their risks.</param>
    /// <param name="lastPiece">Where the plan is cut off, 1 or more.</param>
    public static SequentialPlan For(RiskPoints risks, int lastPiece)
    {
        Require.InRange(lastPiece, 1, 1_000_000, "pieces");
        double p1 = risks.AcceptableShare,
            p2 = risks.RejectableShare;
        var k = Math.Log(p2 * (1 - p1) / (p1 * (1 - p2)));
        return new(
            Math.Log((1 - p1) / (1 - p2)) / k,
            Math.Log((1 - risks.ProducerRisk) / risks.ConsumerRisk) / k,
            Math.Log((1 - risks.ConsumerRisk) / risks.ProducerRisk) / k,
            lastPiece
        );
    }

    /// <summary>Greatest number of failures that accepts after n pieces; null where none does yet.</summary>
    public int? AcceptanceNumber(int n)
    {
        var number = (int)Math.Floor(Slope * n - (n >= LastPiece ? 0 : AcceptIntercept) + 1e-12);
        return number >= 0 ? number : null;
    }

    /// <summary>Least number of failures that rejects after n pieces; null where n pieces cannot hold so many.</summary>
    public int? RejectionNumber(int n)
    {
        var number =
            n >= LastPiece ? AcceptanceNumber(n) + 1 ?? 0 : (int)Math.Ceiling(Slope * n + RejectIntercept - 1e-12);
        return number <= n ? number : null;
    }

    /// <inheritdoc/>
    public override double Acceptance(double failingShare, Supply supply) => Walk(failingShare, supply).Accepted;

    /// <inheritdoc/>
    public override double MeanPiecesCut(double failingShare, Supply supply) => Walk(failingShare, supply).MeanPieces;

    private (double Accepted, double MeanPieces) Walk(double failingShare, Supply supply)
    {
        if (supply is DefectsPerPiece)
            throw new ArgumentException("A sequential plan counts failing pieces, not defects.", nameof(supply));
        Require.InRange(failingShare, 0, 1, "(share)");
        var lot = supply as FiniteLot;
        var failing = lot?.Failing(failingShare) ?? 0;
        // going[d] is the probability of still cutting with d failures so far, for d below width.
        var going = new double[LastPiece + 1];
        going[0] = 1;
        var width = 1;
        var (accepted, mean) = (0.0, 0.0);
        for (var n = 1; n <= LastPiece && width > 0; n++)
        {
            // Downwards, so that each count is read before it is overwritten.
            var carried = 0.0;
            for (var d = width - 1; d >= 0; d--)
            {
                var here = going[d];
                mean += here;
                var fails = lot is null ? failingShare : Math.Clamp((double)(failing - d) / (lot.Pieces - n + 1), 0, 1);
                if (d == width - 1)
                    going[width] = here * fails;
                else
                    going[d + 1] = carried + here * fails;
                carried = here * (1 - fails);
            }
            going[0] = carried;
            width++;
            var accept = Math.Min(AcceptanceNumber(n) ?? -1, width - 1);
            for (var d = 0; d <= accept; d++)
            {
                accepted += going[d];
                going[d] = 0;
            }
            width = Math.Min(width, RejectionNumber(n) ?? width);
        }
        return (Math.Min(1, accepted), mean);
    }
}
