namespace Alburnum.Flow.Mesh;

/// <summary>Where cells meet along a line: finest where a front comes in, each next one wider by the same factor.</summary>
public static class GradedEdges
{
    /// <summary>Finest at the start, where the front comes in.</summary>
    /// <param name="length">Length of the line.</param>
    /// <param name="cells">Cells, 1 or more.</param>
    /// <param name="grading">Logarithm of how many times as wide the cells are at the end; 0 makes them even.</param>
    public static double[] FromOneEnd(double length, int cells, double grading) =>
        [.. Enumerable.Range(0, cells + 1).Select(edge => length * Share((double)edge / cells, grading))];

    /// <summary>Finest at both ends.</summary>
    /// <param name="length">Length of the line.</param>
    /// <param name="cells">Cells, 1 or more.</param>
    /// <param name="grading">Logarithm of how many times as wide the cells are in the middle; 0 makes them even.</param>
    public static double[] FromBothEnds(double length, int cells, double grading)
    {
        return [.. Enumerable.Range(0, cells + 1).Select(edge => length * Both((double)edge / cells))];

        double Both(double t) => t <= 0.5 ? Share(2 * t, grading) / 2 : 1 - Share(2 - 2 * t, grading) / 2;
    }

    private static double Share(double t, double grading) =>
        grading == 0 ? t : double.ExpM1(grading * t) / double.ExpM1(grading);
}
