namespace Alburnum.Impregnation.Prediction;

/// <summary>A way through sapwood into heartwood, from the answers for wood of one kind.</summary>
/// <remarks>
/// Heartwood that lets through less than a twentieth of what the sapwood does ends the sapwood's way: its air is shut in there. Beyond a
/// depth d the two layers resist like one wood of k = d²/(a²/k₁ + 2a(d − a)/k₁ + (d − a)²/k₂), a being the sapwood's thickness; d is
/// where the front stands in wood of that k. Our own joining of the two, held against the solver on a way of two layers.
/// </remarks>
public static class LayeredWay
{
    /// <summary>Filled to this share, a way counts as filled: what is left is a bubble of air.</summary>
    public const double FullShare = 0.97;

    // Below this share of the sapwood's permeability the heartwood ends the sapwood's way.
    private const double ClosedShare = 0.05;

    // The way beyond the sapwood to a thousandth.
    private const int Halvings = 10;

    /// <summary>Depth that solution reaches, mm; the whole way where it is filled.</summary>
    /// <param name="front">The table of the schedule.</param>
    /// <param name="voidFraction">Void share, above 0, at most 1.</param>
    /// <param name="sapwood">Permeability of the sapwood, m², and its thickness, mm; 0 where heartwood reaches the face.</param>
    /// <param name="heartwood">Permeability of the heartwood, m², and the depth of the whole way, mm.</param>
    /// <param name="narrowing">Share of its breadth that the whole way has lost at its end, 0 to 1.</param>
    public static double DepthMm(
        FrontTable front,
        double voidFraction,
        (double M2, double Mm) sapwood,
        (double M2, double EndMm) heartwood,
        double narrowing = 0
    )
    {
        ArgumentNullException.ThrowIfNull(front);
        var (a, end) = (sapwood.Mm, heartwood.EndMm);
        if (a <= 0 || a >= end)
            return Whole(front.At(a <= 0 ? heartwood.M2 : sapwood.M2, voidFraction, end, narrowing).Reached, end);
        var isClosed = IsClosed(sapwood.M2, heartwood.M2);
        var inSapwood = isClosed
            ? Whole(front.At(sapwood.M2, voidFraction, a, narrowing * a / end).Reached, a)
            : Whole(front.At(sapwood.M2, voidFraction, end, narrowing).Reached, end);
        if (inSapwood < a)
            return inSapwood;
        // Never farther than heartwood alone would let it.
        double low = a,
            high = Math.Min(end, a + Whole(front.At(heartwood.M2, voidFraction, end, narrowing).Reached, end));
        for (var i = 0; i < Halvings; i++)
        {
            var middle = (low + high) / 2;
            if (Whole(front.At(Joint(middle), voidFraction, end, narrowing).Reached, end) >= middle)
                low = middle;
            else
                high = middle;
        }
        return low > a && high >= end ? end : low;

        double Joint(double depth)
        {
            var beyond = depth - a;
            return depth * depth / ((a * a + 2 * a * beyond) / sapwood.M2 + beyond * beyond / heartwood.M2);
        }
    }

    /// <summary>True where heartwood lets through so little that the sapwood's way ends at it.</summary>
    internal static bool IsClosed(double sapwoodM2, double heartwoodM2) => heartwoodM2 < ClosedShare * sapwoodM2;

    /// <summary>Depth for a share of a way; nearly all of it counts as all.</summary>
    internal static double Whole(double reached, double wayMm) => reached >= FullShare ? wayMm : reached * wayMm;
}
