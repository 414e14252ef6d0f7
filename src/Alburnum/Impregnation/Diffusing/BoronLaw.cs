using Alburnum.Facts;

namespace Alburnum.Impregnation.Diffusing;

/// <summary>Diffusion coefficient of boron across the grain, by moisture and temperature.</summary>
/// <remarks>Drawn straight in the logarithm between the rows of the data, which says where each comes from. No row, no answer.</remarks>
public sealed record BoronLaw
{
    private readonly IReadOnlyList<(double MoisturePercent, double M2PerS)> _rows;
    private readonly double _per10K;

    /// <summary>Checks rows and factors.</summary>
    /// <param name="rows">Moisture, %, rising, with the coefficient at 20 °C, m²/s. Two or more.</param>
    /// <param name="per10K">Factor for 10 degrees warmer, 1 to 5.</param>
    /// <param name="factor">Factor either way within which nine woods of ten lie, 1 to 100.</param>
    /// <param name="provenance">The weakest of the sources.</param>
    public BoronLaw(
        IReadOnlyList<(double MoisturePercent, double M2PerS)> rows,
        double per10K,
        double factor,
        Provenance provenance
    )
    {
        Require.InRange(rows.Count, 2, 1000, "rows");
        for (var i = 0; i < rows.Count; i++)
        {
            Require.InRange(rows[i].M2PerS, 1e-15, 1e-8, "m²/s", nameof(rows));
            Require.InRange(
                rows[i].MoisturePercent,
                i == 0 ? 0 : rows[i - 1].MoisturePercent + 1e-9,
                Ranges.MoisturePercent.High,
                "%",
                nameof(rows)
            );
        }
        (_rows, _per10K) = (rows, Require.InRange(per10K, 1, 5, "(ratio)"));
        Factor = Require.InRange(factor, 1, 100, "(ratio)");
        Provenance = provenance;
    }

    /// <summary>Factor either way within which nine woods of ten lie.</summary>
    public double Factor { get; }

    /// <summary>The weakest of the sources.</summary>
    public Provenance Provenance { get; }

    /// <summary>Least moisture that the law speaks of, %.</summary>
    public double LeastMoisturePercent => _rows[0].MoisturePercent;

    /// <summary>Greatest moisture that the law speaks of, %.</summary>
    public double MostMoisturePercent => _rows[^1].MoisturePercent;

    /// <summary>Coefficient across the grain, m²/s.</summary>
    /// <param name="moisturePercent">Moisture, %, within the rows.</param>
    /// <param name="celsius">Temperature, °C. 0 to 60.</param>
    public double M2PerS(double moisturePercent, double celsius)
    {
        Require.InRange(moisturePercent, LeastMoisturePercent, MostMoisturePercent, "%");
        Require.Within(celsius, Ranges.StoreCelsius);
        var i = 1;
        while (i < _rows.Count - 1 && _rows[i].MoisturePercent < moisturePercent)
            i++;
        var (low, high) = (_rows[i - 1], _rows[i]);
        var share = (moisturePercent - low.MoisturePercent) / (high.MoisturePercent - low.MoisturePercent);
        return low.M2PerS * Math.Pow(high.M2PerS / low.M2PerS, share) * Math.Pow(_per10K, (celsius - 20) / 10);
    }
}
