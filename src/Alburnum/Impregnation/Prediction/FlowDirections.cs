namespace Alburnum.Impregnation.Prediction;

/// <summary>How much more permeable wood is in one direction than in another.</summary>
/// <param name="name">What they were found on, for instance "white spruce and jack pine".</param>
/// <param name="tangentialToRadial">Tangential over radial. 0.01 to 100.</param>
/// <param name="longitudinalToLateral">Along the grain over across it (geometric mean of radial and tangential). 1 to 1e7.</param>
/// <param name="provenance">Source and standing.</param>
public sealed class FlowDirections(
    string name,
    double tangentialToRadial,
    double longitudinalToLateral,
    Provenance provenance
)
{
    /// <summary>What they were found on.</summary>
    public string Name { get; } = name;

    /// <summary>Tangential over radial.</summary>
    public double TangentialToRadial { get; } = Require.InRange(tangentialToRadial, 0.01, 100, "(ratio)");

    /// <summary>Along the grain over across it.</summary>
    public double LongitudinalToLateral { get; } = Require.InRange(longitudinalToLateral, 1, 1e7, "(ratio)");

    /// <summary>Source and standing.</summary>
    public Provenance Provenance { get; } = provenance;
}
