using Alburnum.Facts;
using Alburnum.Flow.Mesh;
using Alburnum.Impregnation;
using Alburnum.Timber;

namespace Alburnum.Flow.Pieces;

/// <summary>Where the columns and rows of a section's cells meet.</summary>
/// <param name="ColumnEdgesMm">Where columns begin and end, mm from the left.</param>
/// <param name="RowEdgesMm">Where rows begin and end, mm from the bottom.</param>
public sealed record SectionGrid(IReadOnlyList<double> ColumnEdgesMm, IReadOnlyList<double> RowEdgesMm)
{
    /// <summary>Fewest cells on a side.</summary>
    internal static int Least => (int)Ranges.SectionCells.Low;

    /// <summary>Cells across.</summary>
    public int Columns => ColumnEdgesMm.Count - 1;

    /// <summary>Cells up.</summary>
    public int Rows => RowEdgesMm.Count - 1;

    /// <summary>Divides a section.</summary>
    /// <param name="section">The section.</param>
    /// <param name="cellsAcross">Cells across the wider side, 4 to 2000; up, as many as make them as narrow where the front is expected.</param>
    /// <param name="frontMm">How deep a front is expected in a sawn section, mm, above 0: cells are narrowest on its way; null makes them even.</param>
    /// <exception cref="InputRefusedException">The section is thinner than four cells.</exception>
    public static SectionGrid Of(Section section, int cellsAcross, double? frontMm)
    {
        if (Fitting(section, cellsAcross, frontMm) is { } grid)
            return grid;
        var (width, height) = SectionBox.Of(section);
        var expected = FormattableString.Invariant(
            $"at least four cells across the thinner side: {Least * Math.Max(width, height) / cellsAcross:0.##} mm, or a finer grid"
        );
        throw new InputRefusedException(new InputProblem("section", 0, "", "size", section.Label, expected));
    }

    /// <summary>The same; null where the section is thinner than four cells.</summary>
    internal static SectionGrid? Fitting(Section section, int cellsAcross, double? frontMm)
    {
        Require.Within(cellsAcross, Ranges.SectionCells);
        var (width, height) = SectionBox.Of(section);
        // A round section's faces lie along no row or column.
        var front = section is RectangularSection ? frontMm : null;
        var (across, up) = (GradedWay.Of(width / 2, front), GradedWay.Of(height / 2, front));
        var perCell = (width >= height ? across : up).Cells / cellsAcross;
        var (columns, rows) = ((int)Math.Round(across.Cells / perCell), (int)Math.Round(up.Cells / perCell));
        return Math.Min(columns, rows) < Least
            ? null
            : new(
                GradedEdges.FromBothEnds(width, columns, across.Grading),
                GradedEdges.FromBothEnds(height, rows, up.Grading)
            );
    }
}
