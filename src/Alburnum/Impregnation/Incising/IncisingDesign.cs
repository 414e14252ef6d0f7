using Alburnum.Impregnation.Prediction;

namespace Alburnum.Impregnation.Incising;

/// <summary>One pattern tried on a question.</summary>
/// <param name="Name">The pattern's name.</param>
/// <param name="Pattern">The pattern; null where the wood is left plain.</param>
/// <param name="Quick">What the quick model expects with it.</param>
public sealed record IncisingTrial(string Name, IncisingPattern? Pattern, QuickPrediction Quick);

/// <summary>Looks for the lightest pattern that makes enough of the pieces reach the depth.</summary>
public static class IncisingDesign
{
    /// <summary>Tries the wood plain, then each pattern from light to heavy, until one makes the share.</summary>
    /// <param name="question">What is asked; its own pattern is not used.</param>
    /// <param name="patterns">Patterns from light to heavy.</param>
    /// <param name="share">Share of cores that must reach the depth, 0 to 1.</param>
    /// <param name="seed">Seed of the draws, the same for each trial.</param>
    /// <param name="pieces">Pieces to draw for each trial.</param>
    /// <param name="cancellation">Stops between batches.</param>
    /// <returns>The trials in order. The last makes the share, or all were tried and none does.</returns>
    public static IReadOnlyList<IncisingTrial> Lightest(
        PredictionQuestion question,
        IReadOnlyList<(string Name, IncisingPattern Pattern)> patterns,
        double share,
        int seed,
        int pieces = 2_000,
        CancellationToken cancellation = default
    )
    {
        Require.InRange(share, 0, 1, "(share)");
        var trials = new List<IncisingTrial>();
        foreach (
            var (name, pattern) in patterns
                .Select(row => (row.Name, (IncisingPattern?)row.Pattern))
                .Prepend(("none", null))
        )
        {
            var quick = QuickPrediction.Draw(
                question with
                {
                    Incising = pattern,
                },
                seed,
                pieces,
                cancellation: cancellation
            );
            trials.Add(new IncisingTrial(name, pattern, quick));
            if (quick.CoreShare.Value >= share)
                break;
        }
        return trials;
    }
}
