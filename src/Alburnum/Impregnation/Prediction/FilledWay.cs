namespace Alburnum.Impregnation.Prediction;

/// <summary>One way from a face inwards to where the fronts meet, after a whole schedule, as the flow solver finds it.</summary>
/// <param name="Reached">Share of the way down to which solution came, 0 to 1.</param>
/// <param name="Net">Liquid taken in and kept at the end, as a share of the way's voids; below 0 where a vacuum drew the wood's own water out.</param>
/// <param name="Depths">Depths from the face as shares of the way, rising from 0 to 1.</param>
/// <param name="Kept">Solution kept from the face down to each of them, as a share of the way's voids.</param>
public sealed record FilledWay(double Reached, double Net, IReadOnlyList<double> Depths, IReadOnlyList<double> Kept)
{
    /// <summary>When the way held most solution, min since the schedule began; 0 where nobody noted it.</summary>
    public double FullestMinutes { get; init; }

    /// <summary>Liquid taken in by each moment, as a share of the way's voids; empty where nobody noted it.</summary>
    public IReadOnlyList<(double Minutes, double Share)> Gained { get; init; } = [];

    /// <summary>The same way while it takes solution in; depths stay those of the end.</summary>
    /// <param name="minutes">Since the schedule began, min.</param>
    internal FilledWay By(double minutes)
    {
        Require.InRange(Gained.Count, 2, int.MaxValue, "moments");
        var next = 1;
        while (next < Gained.Count - 1 && Gained[next].Minutes < minutes)
            next++;
        var ((from, before), (to, after)) = (Gained[next - 1], Gained[next]);
        return this with { Net = before + Math.Clamp((minutes - from) / (to - from), 0, 1) * (after - before) };
    }

    /// <summary>Solution kept from the face down to a depth, as a share of the way's voids.</summary>
    /// <param name="depth">Share of the way; beyond its end all that is kept counts.</param>
    internal double KeptWithin(double depth)
    {
        int low = 0,
            high = Depths.Count - 1;
        if (depth >= Depths[high])
            return Kept[high];
        while (high - low > 1)
        {
            var middle = (low + high) / 2;
            if (Depths[middle] <= depth)
                low = middle;
            else
                high = middle;
        }
        return Kept[low] + (depth - Depths[low]) / (Depths[high] - Depths[low]) * (Kept[high] - Kept[low]);
    }
}
