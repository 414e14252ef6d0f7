namespace Alburnum.Acceptance.Variables;

/// <summary>Shape that measurements are taken to have.</summary>
public enum Population
{
    /// <summary>Normal: depths, mostly.</summary>
    Normal,

    /// <summary>Log-normal: retentions by piece, which are skewed and cannot fall below 0.</summary>
    LogNormal,
}

/// <summary>Turns values into the scale on which the population is normal, and back.</summary>
internal static class PopulationScale
{
    public static double[] Scaled(this Population population, IReadOnlyList<double> values) =>
        population switch
        {
            Population.Normal => [.. values],
            Population.LogNormal => [.. values.Select(value => Math.Log(Require.Positive(value, "")))],
            _ => throw new ArgumentOutOfRangeException(nameof(population), population, "Not a population."),
        };

    public static double Unscaled(this Population population, double value) =>
        population == Population.LogNormal ? Math.Exp(value) : value;
}
