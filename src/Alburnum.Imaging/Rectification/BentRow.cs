using Alburnum.Imaging.Geometry;

namespace Alburnum.Imaging.Rectification;

/// <summary>One row of the drawing from a photograph whose lens bends straight lines.</summary>
/// <param name="map">From mm to the photograph.</param>
/// <param name="toMm">From pixels of the drawing to mm; it only stretches and shifts.</param>
/// <param name="toStored">From upright to stored pixels.</param>
internal sealed class BentRow(SectionMap map, Homography toMm, Homography toStored)
{
    /// <summary>Places so many pixels apart are mapped; those between lie on a line between them to a hundredth of a pixel.</summary>
    private const int Every = 8;

    private static readonly (double X, double Y)[] One = [(0, 0)];
    private static readonly (double X, double Y)[] Four = [(-0.25, -0.25), (0.25, -0.25), (-0.25, 0.25), (0.25, 0.25)];

    /// <summary>Draws one row.</summary>
    /// <param name="stored">The photograph's pixels.</param>
    /// <param name="y">The row.</param>
    /// <param name="fine">Four samples a pixel instead of one.</param>
    /// <param name="row">The row's pixels, three bytes each.</param>
    public void Draw(StoredPixels stored, int y, bool fine, Span<byte> row)
    {
        var count = row.Length / 3;
        Span<int> sum = stackalloc int[3 * Every];
        var samples = fine ? Four : One;
        var half = RectifyRow.Whole / 2 * samples.Length;
        for (var x = 0; x < count; x += Every)
        {
            sum.Clear();
            var here = Math.Min(Every, count - x);
            foreach (var (ox, oy) in samples)
            {
                var (from, to) = (Stored(x + ox, y + oy), Stored(x + ox + Every, y + oy));
                for (var k = 0; k < here; k++)
                {
                    var share = k / (double)Every;
                    var at = new PointPx(from.X + (share * (to.X - from.X)), from.Y + (share * (to.Y - from.Y)));
                    var (r, g, b) = RectifyRow.Sample(stored, at);
                    (sum[3 * k], sum[(3 * k) + 1], sum[(3 * k) + 2]) = (
                        sum[3 * k] + r,
                        sum[(3 * k) + 1] + g,
                        sum[(3 * k) + 2] + b
                    );
                }
            }
            for (var k = 0; k < 3 * here; k++)
                row[(3 * x) + k] = (byte)((sum[k] + half) / (2 * half));
        }
    }

    private PointPx Stored(double x, double y)
    {
        var mm = toMm.Map(x, y);
        return toStored.Map(map.ToPx(mm.X, mm.Y));
    }
}
