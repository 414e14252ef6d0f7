namespace Alburnum.Imaging.Outline;

/// <summary>
/// How much each of an outline's looks counts: a conditional logit (McFadden, 1974) fitted to drawn photographs of known truth.
/// </summary>
/// <param name="Terms">Weight of each of <see cref="OutlineLook.Terms"/>.</param>
/// <param name="None">Score of the truth's being none of the outlines looked at.</param>
internal sealed record OutlineWeights(IReadOnlyList<double> Terms, double None)
{
    /// <summary>For four straight sides.</summary>
    public static OutlineWeights Sides { get; } = new([23.5, 5.5, 11, 17.5, -6, -3, 6, -2], 29.5);

    /// <summary>For a rim.</summary>
    public static OutlineWeights Rim { get; } = new([17.5, 0, 7, 6, 8, -1.8, -1, -6], 28);

    /// <summary>Weight of <see cref="OutlineLook.Misfit"/>.</summary>
    public double OfMisfit => Terms[MisfitTerm];

    private const int MisfitTerm = 5;

    /// <summary>Logarithm of how likely an outline is, but for a constant.</summary>
    public double Score(OutlineLook look)
    {
        var of = look.Terms;
        double score = 0;
        for (var k = 0; k < of.Length; k++)
            score += Terms[k] * of[k];
        return score;
    }
}
