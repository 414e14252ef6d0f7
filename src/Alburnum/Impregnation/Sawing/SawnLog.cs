using Alburnum.Facts;
using Alburnum.Timber;

namespace Alburnum.Impregnation.Sawing;

/// <summary>Cuts a log into pieces.</summary>
public static class SawnLog
{
    private const double LeastBoardMm = 50;

    /// <summary>The pieces that a pattern gives, from the top left.</summary>
    /// <param name="pattern">The pattern.</param>
    /// <param name="size">Size of a piece; of boards only the height counts, as their thickness.</param>
    /// <param name="logDiameterMm">Diameter of the log under bark at its thin end, mm. 10 to 4000.</param>
    /// <param name="sapwoodMm">Width of the sapwood, mm. 0 or more.</param>
    /// <param name="kerfMm">Width of a saw cut, mm. 0 to 20.</param>
    /// <exception cref="LogFaultException">The log is too small for the pattern.</exception>
    /// <remarks>A round, straight log with the pith in its middle; no taper, no wane, sapwood of even width.</remarks>
    public static IReadOnlyList<SawnPiece> Cut(
        CuttingPattern pattern,
        RectangularSection size,
        double logDiameterMm,
        double sapwoodMm,
        double kerfMm
    )
    {
        var radius = Require.Within(logDiameterMm, Ranges.LogDiameterMm) / 2;
        var heart = Math.Max(0, radius - Require.Within(sapwoodMm, Ranges.SapwoodMm));
        Require.Within(kerfMm, Ranges.KerfMm);
        var (w, h) = (size.WidthMm, size.HeightMm);
        var places = pattern switch
        {
            CuttingPattern.Boxed => Grid(size, 1, 1, kerfMm),
            CuttingPattern.Halved => Grid(size, 1, 2, kerfMm),
            CuttingPattern.Quartered => Grid(size, 2, 2, kerfMm),
            CuttingPattern.Grid => Fullest(size, radius, kerfMm),
            CuttingPattern.Boards => Boards(h, radius, kerfMm),
            _ => throw new ArgumentOutOfRangeException(nameof(pattern), pattern, "Not a pattern."),
        };
        List<(RectangularSection Size, double X, double Y)> all = [.. places];
        var far = all.Count == 0 ? double.MaxValue : all.Max(place => Far(place.Size, place.X, place.Y));
        if (far > radius + 1e-9)
        {
            var needed = all.Count == 0 ? Math.Sqrt(w * w + h * h) / 2 : far;
            throw new LogFaultException(new LogTooSmall(2 * needed));
        }
        return [.. all.Select(place => new SawnPiece(place.Size, place.X, place.Y, heart, radius))];
    }

    private static IEnumerable<(RectangularSection, double X, double Y)> Grid(
        RectangularSection size,
        int columns,
        int rows,
        double kerf
    )
    {
        var (dx, dy) = (size.WidthMm + kerf, size.HeightMm + kerf);
        for (var row = 0; row < rows; row++)
        for (var column = 0; column < columns; column++)
            yield return (size, (column - (columns - 1) / 2.0) * dx, ((rows - 1) / 2.0 - row) * dy);
    }

    // Rows and columns with the pith in a cut or in a piece, whichever of the four gives most pieces.
    private static List<(RectangularSection, double X, double Y)> Fullest(
        RectangularSection size,
        double radius,
        double kerf
    )
    {
        var most = new List<(RectangularSection, double X, double Y)>();
        var (columns, rows) = ((int)(2 * radius / size.WidthMm) + 2, (int)(2 * radius / size.HeightMm) + 2);
        foreach (
            var (c, r) in new[] { (columns, rows), (columns + 1, rows), (columns, rows + 1), (columns + 1, rows + 1) }
        )
        {
            var held = Grid(size, c, r, kerf).Where(place => Far(size, place.X, place.Y) <= radius + 1e-9).ToList();
            if (held.Count > most.Count)
                most = held;
        }
        return most;
    }

    private static IEnumerable<(RectangularSection, double X, double Y)> Boards(
        double thickness,
        double radius,
        double kerf
    )
    {
        var half = (int)((radius - thickness / 2) / (thickness + kerf));
        for (var row = half; row >= -half; row--)
        {
            var y = row * (thickness + kerf);
            var outer = Math.Abs(y) + thickness / 2;
            var width = outer < radius ? 2 * Math.Floor(Math.Sqrt(radius * radius - outer * outer)) : 0;
            if (width >= LeastBoardMm)
                yield return (new RectangularSection(width, thickness), 0, y);
        }
    }

    private static double Far(RectangularSection size, double x, double y)
    {
        var (cornerX, cornerY) = (Math.Abs(x) + size.WidthMm / 2, Math.Abs(y) + size.HeightMm / 2);
        return Math.Sqrt(cornerX * cornerX + cornerY * cornerY);
    }
}
