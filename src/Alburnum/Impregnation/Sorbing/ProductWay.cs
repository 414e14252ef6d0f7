using Alburnum.Impregnation.Prediction;

namespace Alburnum.Impregnation.Sorbing;

/// <summary>Where the product stays on one way from a face inwards, while the liquid that carries it goes on.</summary>
/// <remarks>
/// Liquid and walls are in balance everywhere, and nothing spreads by itself: chromatography (DeVault 1943) in a stream that fills the wood. As solution
/// comes in, all behind the product's front is at full strength, and the front stands where liquid and walls hold what came in: for even
/// filling 1/R of the liquid's depth, R = 1 + walls/liquid. As liquid goes out again, what is ahead of the front comes back without product and takes some
/// along from the walls: a strength moves by the liquid that passes over the liquid and the slope of the sorption (method of characteristics). Free water that the
/// solution pushes ahead or mixes with in place makes no difference to where the front stands. Derivation in docs/science/product.md.
/// </remarks>
public static class ProductWay
{
    // Strength changes little within one of these pieces of a cell.
    private const int PiecesOfCell = 4;

    /// <summary>The product on a way: <see cref="FilledWay.Kept"/> and <see cref="FilledWay.Net"/> count product as the solution at full strength that would carry it.</summary>
    /// <param name="fullest">The way when it held most.</param>
    /// <param name="end">The same way at the end.</param>
    /// <param name="walls">What the walls take.</param>
    /// <param name="narrowing">Share of its breadth that the way has lost at its end, 0 to 1.</param>
    public static FilledWay Of(FilledWay fullest, FilledWay end, WallShare walls, double narrowing)
    {
        ArgumentNullException.ThrowIfNull(fullest);
        ArgumentNullException.ThrowIfNull(end);
        Require.InRange(narrowing, 0, 1, "(share)");
        return walls.AtFull <= 0 ? end : new Run(fullest, end, walls, narrowing).Way();
    }

    private sealed class Run(FilledWay fullest, FilledWay end, WallShare walls, double narrowing)
    {
        private readonly double _given = Math.Max(0, fullest.Kept[^1] - end.Kept[^1]);

        public FilledWay Way()
        {
            var furthest = Front(fullest);
            var steady = Front(end);
            // Product goes on where liquid still moved inwards there after it had begun to leave at the face.
            Func<double, double> strength =
                steady >= furthest
                    ? depth => depth <= steady ? 1 : 0
                    : depth => depth <= furthest ? walls.StrengthAtSlope(SlopeAt(depth, furthest)) : 0;
            var front = Math.Max(steady, furthest);
            double[] depths = [.. Depths(strength, front)];
            var kept = new double[depths.Length];
            for (var i = 1; i < depths.Length; i++)
            {
                var share = strength((depths[i - 1] + depths[i]) / 2);
                kept[i] =
                    kept[i - 1]
                    + share * (end.KeptWithin(depths[i]) - end.KeptWithin(depths[i - 1]))
                    + walls.At(share) * (Voids(depths[i]) - Voids(depths[i - 1]));
            }
            return new FilledWay(
                Math.Min(Math.Max(fullest.Reached, end.Reached), Last(depths, kept)),
                kept[^1],
                depths,
                kept
            );
        }

        // Where walls and liquid, both at full strength, hold all that came in.
        private double Front(FilledWay way) =>
            Least(depth => way.KeptWithin(depth) + walls.AtFull * Voids(depth) >= way.Kept[^1]);

        // What passed a depth without product, over the walls that it passed on its way out.
        private double SlopeAt(double depth, double furthest) =>
            (end.KeptWithin(depth) - fullest.KeptWithin(furthest) + _given)
            / Math.Max(Voids(furthest) - Voids(depth), 1e-15);

        // The way's own cells in pieces, and the depths at which the strength jumps or begins to fall.
        private IEnumerable<double> Depths(Func<double, double> strength, double front)
        {
            double[] jumps = [front, Least(depth => strength(depth) < 1), Least(depth => strength(depth) <= 0)];
            var pieces = end
                .Depths.Zip(end.Depths.Skip(1))
                .SelectMany(cell =>
                    Enumerable
                        .Range(1, PiecesOfCell)
                        .Select(piece => cell.First + piece * (cell.Second - cell.First) / PiecesOfCell)
                );
            return pieces.Concat(jumps).Prepend(0).Order().Distinct();
        }

        private static double Last(double[] depths, double[] kept)
        {
            var i = kept.Length - 1;
            while (i > 0 && kept[i] - kept[i - 1] <= 1e-12)
                i--;
            return depths[i];
        }

        // Share of the way's voids that lies within a depth.
        private double Voids(double depth) => (depth - narrowing * depth * depth / 2) / (1 - narrowing / 2);

        private static double Least(Func<double, bool> holds)
        {
            double low = 0,
                high = 1;
            for (var i = 0; i < 50; i++)
            {
                var middle = (low + high) / 2;
                (low, high) = holds(middle) ? (low, middle) : (middle, high);
            }
            return high;
        }
    }
}
