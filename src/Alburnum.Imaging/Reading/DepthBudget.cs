using Alburnum.Measures;

namespace Alburnum.Imaging.Reading;

/// <summary>What makes the mean and the least depth of one reading uncertain, in mm.</summary>
/// <param name="MeanMm">Of the mean depth.</param>
/// <param name="LeastMm">Of the least depth, cause by cause in the same order.</param>
public sealed record DepthBudget(UncertaintyBudget MeanMm, UncertaintyBudget LeastMm);
