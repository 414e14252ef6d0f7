using Alburnum.Imaging.Colour;
using Alburnum.Measures;

namespace Alburnum.Imaging.Front;

/// <summary>Stretches where the front seems to draw back, but what lies there is not plain untreated wood: a knot, a thumb, a place the spray missed.</summary>
/// <remarks>
/// In such a stretch the colour of the missing band is compared with untreated wood elsewhere in the section and just beside it, in units of how much
/// untreated wood varies from place to place. Wood that is alike is a true shallow place and stays in. Its figures are our own choice.
/// </remarks>
internal static class OddWood
{
    /// <summary>Wood beside a stretch is looked at up to so far away, mm.</summary>
    private const double BesideMm = 12;

    /// <summary>The typical depth at a place is that of the face so far to either side, mm.</summary>
    private const double MedianOverMm = 30;

    /// <summary>A stretch so wide may be heartwood lying open, mm.</summary>
    private const double WideMm = 15;

    /// <summary>Every so many-th column is enough for a colour or a median.</summary>
    private const int ColumnEvery = 2;

    /// <summary>How far beyond a front wood is plainly untreated, and how far that wood is looked at, mm.</summary>
    private const double BeyondMm = 0.8;

    private const double LookedAtMm = 6;

    /// <summary>The section's plain untreated wood is taken up to so far beyond its front, mm.</summary>
    private const double PlainToMm = 7;

    /// <summary>What is kept clear of a front on its outer and inner side where a band is missing, mm.</summary>
    private const double OutsideMm = 0.4;

    private const double InsideMm = 0.3;

    /// <summary>A front has drawn back where it lies this much, mm, and this share, short of what is typical.</summary>
    private const double DrawnBackMm = 1.2;

    private const double DrawnBackShare = 0.2;

    /// <summary>Columns at either side of a stretch that belong to neither.</summary>
    private const int MarginColumns = 2;

    /// <summary>A typical depth is somewhat above the middle, since what draws back pulls the middle down; never less than this share of the section's.</summary>
    private const double TypicalRank = 0.6;

    private const double LeastOfUsual = 0.6;

    /// <summary>Cells without which a colour is not known: of a missing band, of wood beside it, of all plain wood.</summary>
    private const int LeastCells = 8;

    private const int LeastBeside = 20;

    private const int LeastPlain = 50;

    /// <summary>Variance of brightness that untreated wood has at least.</summary>
    private const double LightVariance = 0.02;

    /// <summary>Squared distances, in what untreated wood varies by: below the first alike, above the second no longer the same.</summary>
    private const double Strange = 3;

    private const double AnotherColour = 2;

    /// <summary>Weight of blue against red in a difference of hue, and how much nearer to bare wood unsprayed wood must be.</summary>
    private const double BlueWeight = 0.6;

    private const double NearerToBare = 0.75;

    /// <summary>Difference of hue, in logarithms of light, beyond what wood varies by.</summary>
    private const double PlainlyOtherHue = 0.2;

    /// <summary>Pale sapwood that no reagent has reached, a little washed out by the light. From memory.</summary>
    private static readonly LogColour PaleWood = LogColour.OfHex(0xD8C9B2);

    /// <summary>For each front, the columns to leave out.</summary>
    public static IReadOnlyList<bool[]> Columns(IReadOnlyList<FaceFront> fronts)
    {
        var odd = fronts.Select(f => new bool[f.Strip.Columns]).ToList();
        double[] seen = [.. fronts.SelectMany(f => f.DepthMm.Where((_, i) => !f.Hidden[i]))];
        // Where nothing can be seen, nothing can be seen to be odd.
        if (seen.Length == 0)
            return odd;
        var plain = new Tally();
        var usual = Quantiles.UpperMedian(seen);
        var typical = fronts.Select(front => Typical(front, LeastOfUsual * usual)).ToList();
        for (var f = 0; f < fronts.Count; f++)
        for (var i = 0; i < fronts[f].Strip.Columns; i += ColumnEvery)
            if (!fronts[f].Hidden[i])
                plain.Add(
                    fronts[f],
                    i,
                    Math.Max(fronts[f].DepthMm[i], typical[f][i]) + BeyondMm,
                    fronts[f].DepthMm[i] + PlainToMm
                );
        if (plain.Count < LeastPlain)
            return odd;
        var untreated = new Gaussian3(plain.Mean, plain.Covariance(LightVariance));
        for (var f = 0; f < fronts.Count; f++)
            foreach (var (from, to) in Stretches(fronts[f], typical[f]))
                if (IsOdd(fronts[f], typical[f], from, to, untreated))
                    for (var i = from; i <= to; i++)
                        odd[f][i] = true;
        return odd;
    }

    private static bool IsOdd(FaceFront front, double[] typical, int from, int to, Gaussian3 untreated)
    {
        var strip = front.Strip;
        var (missing, below, beside) = (new Tally(), new Tally(), new Tally());
        for (var i = from; i <= to; i++)
        {
            missing.Add(
                front,
                i,
                front.DepthMm[i] + OutsideMm,
                Math.Min(typical[i], front.Evidence.TreatedAgainMm(i, front.DepthMm[i] + OutsideMm)) - InsideMm
            );
            below.Add(front, i, typical[i] + BeyondMm, typical[i] + LookedAtMm);
        }
        var reach = (int)(BesideMm / strip.StepMm);
        for (var i = Math.Max(0, from - reach); i < Math.Min(strip.Columns, to + reach); i++)
            if (i < from - MarginColumns || i > to + MarginColumns)
                beside.Add(front, i, front.DepthMm[i] + BeyondMm, front.DepthMm[i] + LookedAtMm);
        if (missing.Count < LeastCells)
            return false;
        if (LooksUnsprayed(missing.Mean, untreated.Mean))
            return true;
        double Apart(double[] mean) =>
            untreated.Distance2(
                (float)(missing.Mean[0] - mean[0] + untreated.Mean[0]),
                (float)(missing.Mean[1] - mean[1] + untreated.Mean[1]),
                (float)(missing.Mean[2] - mean[2] + untreated.Mean[2])
            );
        var strange = Apart(untreated.Mean);
        if (beside.Count > LeastBeside)
            strange = Math.Min(strange, Apart(beside.Mean));
        if (strange < Strange)
            return false;
        // Heartwood lying open: wide, and the same farther in.
        return (to - from + 1) * strip.StepMm < WideMm || below.Count < LeastCells || Apart(below.Mean) > AnotherColour;
    }

    // Hue nearer to pale, bare wood than to this section's own sprayed, untreated wood, and plainly another than the latter:
    // where the reagent leaves untreated wood as it is, a true shallow place must stay in.
    private static bool LooksUnsprayed(double[] colour, double[] sprayed)
    {
        static double Apart(double[] a, double u, double v) => double.Hypot(a[1] - u, BlueWeight * (a[2] - v));
        var own = Apart(colour, sprayed[1], sprayed[2]);
        return own > PlainlyOtherHue && Apart(colour, PaleWood.U, PaleWood.V) < NearerToBare * own;
    }

    // Median depth about each column; where a whole stretch is bare, the section's own usual depth, lest the stretch be its own measure.
    private static double[] Typical(FaceFront front, double leastMm)
    {
        var reach = (int)(MedianOverMm / front.Strip.StepMm);
        var typical = new double[front.Strip.Columns];
        var near = new List<double>();
        for (var i = 0; i < typical.Length; i++)
        {
            near.Clear();
            for (var k = i - reach; k <= i + reach; k += ColumnEvery)
            {
                var j = front.Strip.Face.Closed ? (k + (2 * typical.Length)) % typical.Length : k;
                if (j >= 0 && j < typical.Length && !front.Hidden[j])
                    near.Add(front.DepthMm[j]);
            }
            near.Sort();
            typical[i] = Math.Max(leastMm, near.Count > 0 ? near[(int)(TypicalRank * near.Count)] : front.DepthMm[i]);
        }
        return typical;
    }

    private static IEnumerable<(int From, int To)> Stretches(FaceFront front, double[] typical)
    {
        var start = -1;
        for (var i = 0; i <= typical.Length; i++)
        {
            var drawnBack =
                i < typical.Length
                && typical[i] - front.DepthMm[i] > Math.Max(DrawnBackMm, DrawnBackShare * typical[i]);
            if (drawnBack && start < 0)
                start = i;
            if (drawnBack || start < 0)
                continue;
            yield return (Math.Max(0, start - MarginColumns), Math.Min(typical.Length - 1, i + 1));
            start = -1;
        }
    }

    /// <summary>Mean and spread of cell colours.</summary>
    private sealed class Tally
    {
        private readonly double[] _sum = new double[3];
        private readonly double[] _square = new double[6];

        public int Count { get; private set; }

        public double[] Mean => [_sum[0] / Count, _sum[1] / Count, _sum[2] / Count];

        public double[] Covariance(double ridgeL)
        {
            var m = Mean;
            return
            [
                (_square[0] / Count) - (m[0] * m[0]) + ridgeL,
                (_square[1] / Count) - (m[0] * m[1]),
                (_square[2] / Count) - (m[0] * m[2]),
                (_square[3] / Count) - (m[1] * m[1]),
                (_square[4] / Count) - (m[1] * m[2]),
                (_square[5] / Count) - (m[2] * m[2]),
            ];
        }

        public void Add(FaceFront front, int column, double fromMm, double toMm)
        {
            var strip = front.Strip;
            var low = (int)Math.Ceiling(Math.Max(fromMm, WoodSamples.EdgeMm) / strip.RowMm);
            var high = Math.Min(strip.Rows, (int)(toMm / strip.RowMm));
            for (var j = low; j < high; j++)
            {
                var c = front.Evidence.Colour[(column * strip.Rows) + j];
                Count++;
                (_sum[0], _sum[1], _sum[2]) = (_sum[0] + c.L, _sum[1] + c.U, _sum[2] + c.V);
                _square[0] += c.L * c.L;
                _square[1] += c.L * c.U;
                _square[2] += c.L * c.V;
                _square[3] += c.U * c.U;
                _square[4] += c.U * c.V;
                _square[5] += c.V * c.V;
            }
        }
    }
}
