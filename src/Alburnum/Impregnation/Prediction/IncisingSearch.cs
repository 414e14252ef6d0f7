using Alburnum.Facts;
using Alburnum.Impregnation.Incising;

namespace Alburnum.Impregnation.Prediction;

/// <summary>A search over depth and spacing for the pattern that cuts out least wood and still makes enough cores reach the depth.</summary>
/// <param name="Best">The wood left plain, then the widest spacing that is enough at each depth of cut, rising; the closest tried where none is.</param>
/// <param name="Chosen">The lightest that is enough, one within the design code's limits before any beyond them; null where none is.</param>
public sealed record IncisingSearch(IReadOnlyList<IncisingTrial> Best, IncisingTrial? Chosen)
{
    // Cuts as wide as a wedge tooth of that depth leaves them, and spacings that rollers are made with.
    private const double WidthOverDepth = 0.12;
    private const double ClosestMm = 2.5;
    private const double WidestMm = 12;
    private const double StepMm = 0.5;
    private static readonly double[] DepthsMm = [4, 6, 8, 10, 12, 15, 19];

    /// <summary>Looks for the lightest pattern.</summary>
    /// <param name="asked">What is asked, whose own pattern is not used, and the table of its schedule, solution and moisture.</param>
    /// <param name="toothLengthMm">Length of a cut along the grain at the face, mm. 1 to 100.</param>
    /// <param name="penalty">The design code's limits.</param>
    /// <param name="share">Share of cores that must reach the depth, 0 to 1.</param>
    /// <param name="draws">Seed of the draws, and pieces to draw; the same for each pattern.</param>
    /// <param name="cancellation">Stops between batches.</param>
    /// <remarks>Along the grain cuts stand three tooth lengths apart. Closer rows never bring less, so the spacing is bisected.</remarks>
    public static IncisingSearch Lightest(
        (PredictionQuestion Question, FrontTable Front) asked,
        double toothLengthMm,
        IncisingPenalty penalty,
        double share,
        (int Seed, int Pieces) draws,
        CancellationToken cancellation = default
    )
    {
        var (question, front) = asked;
        Require.InRange(share, 0, 1, "(share)");
        Require.Within(toothLengthMm, Ranges.IncisionLengthMm);
        var plain = new IncisingTrial(null, Draw(null));
        var best = new List<IncisingTrial> { plain };
        if (IsEnough(plain))
            return new(best, plain);
        best.AddRange(
            DepthsMm
                .Where(depth => depth < question.Section.ThicknessMm / 2)
                .AsParallel()
                .AsOrdered()
                .WithCancellation(cancellation)
                .Select(depth => Widest(step => Trial(depth, step), IsEnough))
        );
        var chosen = best.Where(IsEnough)
            .OrderBy(trial => penalty.Beyond(trial.Pattern!).Count > 0)
            .ThenBy(trial => trial.Pattern!.CutOutCm3PerM2)
            .FirstOrDefault();
        return new(best, chosen);

        bool IsEnough(IncisingTrial trial) => trial.Quick.CoreShare.Value >= share;

        IncisingTrial Trial(double depth, int step)
        {
            var pattern = new IncisingPattern(
                depth,
                toothLengthMm,
                WidthOverDepth * depth,
                3 * toothLengthMm,
                ClosestMm + step * StepMm
            );
            return new(pattern, Draw(pattern));
        }

        QuickPrediction Draw(IncisingPattern? pattern)
        {
            var incised = question with { Incising = pattern };
            return QuickPrediction.Draw(incised, front, draws.Seed, draws.Pieces, cancellation: cancellation);
        }
    }

    // The widest spacing, in steps from the closest, that is enough; the closest where none is.
    private static IncisingTrial Widest(Func<int, IncisingTrial> at, Func<IncisingTrial, bool> isEnough)
    {
        var (close, wide) = (0, (int)((WidestMm - ClosestMm) / StepMm));
        var trial = at(close);
        if (!isEnough(trial))
            return trial;
        while (close < wide)
        {
            var middle = (close + wide + 1) / 2;
            if (at(middle) is var wider && isEnough(wider))
                (close, trial) = (middle, wider);
            else
                wide = middle - 1;
        }
        return trial;
    }
}
