using Alburnum.Impregnation.Incising;

namespace Alburnum.Impregnation.Prediction;

/// <summary>One pattern tried on a question.</summary>
/// <param name="Name">The pattern's name.</param>
/// <param name="Pattern">The pattern; null where the wood is left plain.</param>
/// <param name="Quick">What the quick model expects with it.</param>
public sealed record IncisingTrial(string Name, IncisingPattern? Pattern, QuickPrediction Quick);
