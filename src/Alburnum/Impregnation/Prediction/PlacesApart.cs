namespace Alburnum.Impregnation.Prediction;

/// <summary>A place on a measured section.</summary>
/// <param name="Face">Face number from 1.</param>
/// <param name="AlongMm">Distance from the start of the face, mm.</param>
/// <param name="DepthMm">Depth there, mm. 0 or more.</param>
public readonly record struct MeasuredPlace(int Face, double AlongMm, double DepthMm);

/// <summary>Which places of one measured section tell something of their own: neighbours are alike, and thousands of them are not thousands of places.</summary>
/// <param name="Counted">Their numbers in the order given, rising.</param>
/// <param name="DistanceMm">How far apart they lie, mm; infinite where one place of each face counts.</param>
/// <remarks>
/// The correlation of the logarithms of two depths by their distance along a face is summed as far as it is above nothing (the initial positive sequence of Geyer 1992, from
/// memory). Where it falls off as an exponential, three of its lengths make places that share a twentieth of their variance.
/// </remarks>
public sealed record PlacesApart(IReadOnlyList<int> Counted, double DistanceMm)
{
    // Shallower than this a depth cannot be told from none.
    private const double LeastMm = 0.3;
    private const double OfCorrelation = 1.5;

    /// <summary>Chooses them.</summary>
    /// <param name="places">Every place of one section, in any order; one or more.</param>
    public static PlacesApart Of(IReadOnlyList<MeasuredPlace> places)
    {
        ArgumentNullException.ThrowIfNull(places);
        Require.InRange(places.Count, 1, int.MaxValue, "places");
        var faces = Enumerable
            .Range(0, places.Count)
            .GroupBy(i => places[i].Face)
            .Select(face => face.OrderBy(i => places[i].AlongMm).ToArray())
            .ToList();
        var distance = DistanceOf(places, faces);
        return new([.. faces.SelectMany(face => Spaced(places, face, distance)).Order()], distance);
    }

    private static double DistanceOf(IReadOnlyList<MeasuredPlace> places, IReadOnlyList<int[]> faces)
    {
        double[] gaps =
        [
            .. faces
                .SelectMany(face => face.Zip(face.Skip(1), (a, b) => places[b].AlongMm - places[a].AlongMm))
                .Where(gap => gap > 0)
                .Order(),
        ];
        double[] ln = [.. places.Select(place => Math.Log(Math.Max(LeastMm, place.DepthMm)))];
        var mean = ln.Average();
        var variance = ln.Average(value => (value - mean) * (value - mean));
        // Depths all alike are one depth: the wood is filled, or nothing went in.
        if (gaps.Length == 0 || variance < 1e-9)
            return double.PositiveInfinity;
        var step = gaps[gaps.Length / 2];
        var sums = new List<(double Products, int Pairs)>();
        foreach (var face in faces)
            for (var i = 0; i < face.Length; i++)
            for (var j = i + 1; j < face.Length; j++)
            {
                var lag = (int)Math.Round((places[face[j]].AlongMm - places[face[i]].AlongMm) / step);
                while (sums.Count <= lag)
                    sums.Add((0, 0));
                sums[lag] = (sums[lag].Products + (ln[face[i]] - mean) * (ln[face[j]] - mean), sums[lag].Pairs + 1);
            }
        double Correlation(int lag) =>
            lag < sums.Count && sums[lag].Pairs > 0 ? sums[lag].Products / sums[lag].Pairs / variance : 0;
        double sum = 0;
        for (var lag = 1; Correlation(lag) + Correlation(lag + 1) > 0; lag += 2)
            sum += Correlation(lag) + Correlation(lag + 1);
        return Math.Max(step, OfCorrelation * 2 * sum * step);
    }

    // As many as there is room for, as far from both ends; each the place nearest to where it should be.
    private static IEnumerable<int> Spaced(IReadOnlyList<MeasuredPlace> places, int[] face, double distance)
    {
        var (from, to) = (places[face[0]].AlongMm, places[face[^1]].AlongMm);
        var count = (int)Math.Min(face.Length, Math.Floor((to - from) / distance + 1e-9) + 1);
        var first = count == 1 ? (from + to) / 2 : from + (to - from - (count - 1) * distance) / 2;
        return Enumerable
            .Range(0, count)
            .Select(n => face.MinBy(i => Math.Abs(places[i].AlongMm - first - (count == 1 ? 0 : n * distance))))
            .Distinct();
    }
}
