using Alburnum.Flow.Pieces;
using Alburnum.Impregnation.Prediction;
using Alburnum.Impregnation.Sorbing;

namespace Alburnum.Workflows.Impregnation;

/// <summary>The laws of what walls take up that assays of zones are weighed against: the one that is known, or several, each as likely before.</summary>
/// <param name="known">What the walls take; null where nobody knows.</param>
internal sealed class ZoneLaws(Sorption? known)
{
    /// <summary>Most product that walls take on contact and keep, g per kg of oven-dry wood, by each law where nobody knows. Our own choice: from nothing to far more than was read of any wood.</summary>
    public static IReadOnlyList<double> MostGPerKg { get; } = [0, 1, 2, 4, 8, 16, 32, 64];

    private readonly Dictionary<(Treatment, double), IReadOnlyList<FrontTable>> _products = [];

    /// <summary>How many there are.</summary>
    public int Count => known is null ? MostGPerKg.Count : 1;

    /// <summary>The table of the product by each law.</summary>
    /// <param name="treatment">The treatment; the section makes no difference.</param>
    /// <param name="question">The same with its wood.</param>
    /// <param name="strengthKgPerM3">Product in the solution, kg/m³.</param>
    public IReadOnlyList<FrontTable> Products(Treatment treatment, TreatingQuestion question, double strengthKgPerM3)
    {
        if (_products.TryGetValue((treatment, strengthKgPerM3), out var tables))
            return tables;
        IReadOnlyList<Sorption?> laws = known is null
            ? [.. MostGPerKg.Select(most => Sorption.Known(null, most > 0 ? most : null))]
            : [known];
        tables = ProductRun.Tables(
            question.Prediction,
            [
                .. laws.Select(law =>
                    law?.In(strengthKgPerM3, question.DryKgPerM3, question.Prediction.VoidFraction) ?? default
                ),
            ]
        );
        _products.Add((treatment, strengthKgPerM3), tables);
        return tables;
    }
}
