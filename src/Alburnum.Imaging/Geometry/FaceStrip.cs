namespace Alburnum.Imaging.Geometry;

/// <summary>One face unrolled: columns along the face, rows inward.</summary>
/// <param name="Face">The face.</param>
/// <param name="Columns">Number of columns; column i stands at (i + 0.5)·StepMm.</param>
/// <param name="Rows">Number of rows; row j stands at (j + 0.5)·RowMm.</param>
/// <param name="StepMm">Distance between columns, mm.</param>
/// <param name="RowMm">Distance between rows, mm.</param>
/// <param name="ReachRows">Rows of each column that belong to this face.</param>
internal sealed record FaceStrip(PlanFace Face, int Columns, int Rows, double StepMm, double RowMm, int[] ReachRows)
{
    /// <summary>However small the face. Our own choice.</summary>
    private const int LeastColumns = 4;

    private const int LeastRows = 2;

    /// <summary>Lays a strip over a face, as deep as it can be read or down to a depth.</summary>
    public static FaceStrip Over(
        SectionPlan plan,
        PlanFace face,
        double stepMm,
        double rowMm,
        double deepestMm = double.MaxValue
    )
    {
        var columns = Math.Max(LeastColumns, (int)Math.Round(face.LengthMm / stepMm));
        var step = face.LengthMm / columns;
        var rows = Math.Max(LeastRows, (int)(Math.Min(plan.ReachMm, deepestMm) / rowMm));
        var reach = new int[columns];
        for (var i = 0; i < columns; i++)
            reach[i] = Math.Clamp((int)Math.Round(plan.ReachAt(face, (i + 0.5) * step) / rowMm), 0, rows);
        return new(face, columns, rows, step, rowMm, reach);
    }

    public double S(int column) => (column + 0.5) * StepMm;

    public double T(int row) => (row + 0.5) * RowMm;
}
