namespace Alburnum.Flow.Pieces;

/// <summary>How the cells on a way from a face to the middle are graded so that they are narrowest where its front goes.</summary>
/// <remarks>
/// N cells on a way of length L, each wider than the one before by the same factor, are g/N·(L/(eᵍ − 1) + x) wide at depth x, g being the logarithm of how
/// many times as wide the last is as the first. The g of the narrowest cells half-way to the front is taken: the error of a front gathers on all of its way.
/// </remarks>
/// <param name="Grading">Logarithm of how many times as wide as at the face the cells are in the middle; 0 where they are even.</param>
/// <param name="Cells">How many cells make those half-way to the front 1 mm wide.</param>
internal readonly record struct GradedWay(double Grading, double Cells)
{
    // A thousand times as wide in the middle: beyond, the first cells are too thin to matter and Newton's method takes longer.
    private const double Most = 7;
    private const int Halvings = 40;

    /// <summary>The grading for a front.</summary>
    /// <param name="wayMm">Length of the way, mm. Above 0.</param>
    /// <param name="frontMm">How deep the front is expected, mm, above 0; null for even cells.</param>
    public static GradedWay Of(double wayMm, double? frontMm)
    {
        if (frontMm is not { } front || front >= wayMm)
            return new(0, wayMm);
        var share = front / 2 / wayMm;
        double low = 1e-3,
            high = Most;
        for (var i = 0; i < Halvings; i++)
        {
            var middle = (low + high) / 2;
            // The slope of g/(eᵍ − 1) + g·share by g.
            var more = double.ExpM1(middle);
            if (1 / more - middle * (more + 1) / (more * more) + share > 0)
                high = middle;
            else
                low = middle;
        }
        return new(high, high * wayMm * (1 / double.ExpM1(high) + share));
    }
}
