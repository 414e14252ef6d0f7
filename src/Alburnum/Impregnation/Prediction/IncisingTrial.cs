using Alburnum.Impregnation.Incising;

namespace Alburnum.Impregnation.Prediction;

/// <summary>One pattern tried on a question.</summary>
/// <param name="Pattern">The pattern; null where the wood is left plain.</param>
/// <param name="Quick">What is expected with it.</param>
public sealed record IncisingTrial(IncisingPattern? Pattern, QuickPrediction Quick);
