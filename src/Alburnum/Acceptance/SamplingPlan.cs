namespace Alburnum.Acceptance;

/// <summary>A way to judge a lot from pieces cut out of it.</summary>
public abstract record SamplingPlan
{
    private protected SamplingPlan() { }

    /// <summary>Probability that the plan accepts.</summary>
    /// <param name="failingShare">True share of failing pieces, 0 to 1; defects per piece for <see cref="DefectsPerPiece"/>.</param>
    /// <param name="supply">What the pieces are drawn from.</param>
    public abstract double Acceptance(double failingShare, Supply supply);

    /// <summary>Average sample number: pieces cut on average before the plan decides.</summary>
    public abstract double MeanPiecesCut(double failingShare, Supply supply);

    /// <summary>Most pieces that the plan may ask to be cut.</summary>
    public abstract int MostPiecesCut { get; }
}
