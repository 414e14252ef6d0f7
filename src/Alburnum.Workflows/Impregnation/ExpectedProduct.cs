using Alburnum.Facts;
using Alburnum.Flow.Pieces;
using Alburnum.Impregnation.Prediction;
using Alburnum.Impregnation.Sorbing;

namespace Alburnum.Workflows.Impregnation;

/// <summary>On whose word the walls of wood take up product.</summary>
public enum WallsBasis
{
    /// <summary>They are taken to take up nothing: product goes as far as the solution.</summary>
    Nothing,

    /// <summary>As whoever asks says.</summary>
    Given,

    /// <summary>Nobody knows: as much as full cavities hold, taken on contact and kept. A coefficient of our own, to show what it may come to.</summary>
    ForComparison,

    /// <summary>They take up all that comes by: product stays at the face, and what comes back is bare water. The other end of what may be.</summary>
    Everything,
}

/// <summary>What is expected of the product in pieces of one size, the walls taking up so much.</summary>
/// <param name="Basis">On whose word they do.</param>
/// <param name="Quick">What is expected; litres count product as the working solution that would carry it.</param>
/// <param name="Bands">The same over depth, under the middle of a face; empty where all stays at the face.</param>
public sealed record ExpectedProduct(WallsBasis Basis, QuickPrediction Quick, IReadOnlyList<DepthBand> Bands)
{
    // As much as full cavities hold, taken on contact and kept.
    private static readonly WallShare ForComparison = new(1, double.PositiveInfinity);

    // Far more than any schedule brings in.
    private static readonly WallShare Everything = new(1e6, double.PositiveInfinity);

    /// <summary>What is expected with walls that take nothing, and with what is known of them or, where nothing is, with a coefficient for comparison and with walls that take all.</summary>
    /// <param name="asked">The wood and its schedule.</param>
    /// <param name="plain">What is expected of the solution itself.</param>
    /// <param name="sorption">What the walls take; null where nobody knows.</param>
    /// <param name="strengthKgPerM3">Product in the working solution, kg/m³. Above 0.</param>
    /// <param name="seed">Seed of the draws, the same as of <paramref name="plain"/>.</param>
    /// <param name="stop">Stops between batches.</param>
    internal static IReadOnlyList<ExpectedProduct> Of(
        TreatingQuestion asked,
        QuickPrediction plain,
        Sorption? sorption,
        double strengthKgPerM3,
        int seed,
        CancellationToken stop
    )
    {
        var question = asked.Prediction;
        var solution = WayRun.Table(question);
        // As much as walls hold at most.
        var most = new Sorption(null, Ranges.SorptionMostGPerKg.High).In(
            strengthKgPerM3,
            asked.DryKgPerM3,
            question.VoidFraction
        );
        WallShare Bounded(WallShare walls) => walls with { AtFull = Math.Min(walls.AtFull, most.AtFull) };
        var nothing = new ExpectedProduct(WallsBasis.Nothing, plain, DepthBand.Of(question, solution));
        if (sorption?.In(strengthKgPerM3, asked.DryKgPerM3, question.VoidFraction) is { } given)
            return [nothing, With(WallsBasis.Given, ProductRun.Table(question, Bounded(given)))];
        var tables = ProductRun.Tables(question, [Bounded(ForComparison), Everything]);
        return [nothing, With(WallsBasis.ForComparison, tables[0]), With(WallsBasis.Everything, tables[1])];

        ExpectedProduct With(WallsBasis basis, FrontTable table) =>
            new(
                basis,
                // Product comes with the solution, however much a plant's wood takes up; it may be more than would fill the voids, but no
                // more than cavities and walls hold.
                QuickPrediction
                    .Draw(question, solution, seed, plain.Pieces, table, stop)
                    .TakingUp(plain.UptakeTimes, question.VoidFraction * (1 + most.AtFull)),
                basis == WallsBasis.Everything ? [] : DepthBand.Of(question, table)
            );
    }
}
