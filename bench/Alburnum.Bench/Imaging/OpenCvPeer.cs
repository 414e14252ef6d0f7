using OpenCvSharp;

namespace Alburnum.Bench.Imaging;

/// <summary>
/// What a competent scientist scripts in an afternoon: rectify, Lab, two-class k-means, morphology, depth scan.
/// The peer that the reader is timed and scored against; one thread.
/// </summary>
internal static class OpenCvPeer
{
    private const int PixelsPerMm = 10;

    /// <summary>Depth every millimetre along each of the four faces, mm.</summary>
    /// <param name="photograph">Decoded photograph, blue-green-red.</param>
    /// <param name="corners">Corners, clockwise from the top left.</param>
    public static double[][] Depths(Mat photograph, IReadOnlyList<Point2f> corners, double widthMm, double heightMm)
    {
        using var treated = TreatedMask(photograph, corners, widthMm, heightMm);
        return Scan(treated);
    }

    /// <summary>Treated share of the section's area, 0 to 1.</summary>
    public static double TreatedShare(Mat photograph, IReadOnlyList<Point2f> corners, double widthMm, double heightMm)
    {
        using var treated = TreatedMask(photograph, corners, widthMm, heightMm);
        return Cv2.CountNonZero(treated) / (double)treated.Total();
    }

    private static Mat TreatedMask(Mat photograph, IReadOnlyList<Point2f> corners, double widthMm, double heightMm)
    {
        var width = (int)(widthMm * PixelsPerMm);
        var height = (int)(heightMm * PixelsPerMm);
        Point2f[] flat = [new(0, 0), new(width, 0), new(width, height), new(0, height)];
        using var homography = Cv2.GetPerspectiveTransform(corners, flat);
        using var rectified = new Mat();
        Cv2.WarpPerspective(photograph, rectified, homography, new Size(width, height), InterpolationFlags.Linear);
        using var lab = new Mat();
        Cv2.CvtColor(rectified, lab, ColorConversionCodes.BGR2Lab);
        using var smooth = new Mat();
        Cv2.GaussianBlur(lab, smooth, new Size(5, 5), 0);
        using var rows = smooth.Reshape(1, width * height);
        using var samples = new Mat();
        rows.ConvertTo(samples, MatType.CV_32F);
        using var labels = new Mat();
        using var centres = new Mat();
        Cv2.SetTheRNG(1);
        Cv2.Kmeans(
            samples,
            2,
            labels,
            new TermCriteria(CriteriaTypes.Eps | CriteriaTypes.MaxIter, 20, 0.5),
            2,
            KMeansFlags.PpCenters,
            centres
        );
        using var image = labels.Reshape(1, height);
        using var second = new Mat();
        Cv2.Compare(image, Scalar.All(1), second, CmpTypes.EQ);
        var treated = new Mat();
        if (BorderShare(second) < 0.5)
            Cv2.BitwiseNot(second, treated);
        else
            second.CopyTo(treated);
        using var brush = Cv2.GetStructuringElement(MorphShapes.Ellipse, new Size(7, 7));
        Cv2.MorphologyEx(treated, treated, MorphTypes.Open, brush);
        Cv2.MorphologyEx(treated, treated, MorphTypes.Close, brush);
        return treated;
    }

    /// <summary>The class that holds most of the outermost millimetre is taken to be the treated one.</summary>
    private static double BorderShare(Mat mask)
    {
        using var border = Mat.Zeros(mask.Size(), MatType.CV_8U).ToMat();
        Cv2.Rectangle(border, new Rect(0, 0, mask.Width, mask.Height), Scalar.All(255), 2 * PixelsPerMm);
        var all = Cv2.CountNonZero(border);
        Cv2.BitwiseAnd(mask, border, border);
        return Cv2.CountNonZero(border) / (double)all;
    }

    private static double[][] Scan(Mat treated)
    {
        var indexer = treated.GetUnsafeGenericIndexer<byte>();
        var (width, height) = (treated.Width, treated.Height);
        int Run(int x, int y, int dx, int dy)
        {
            var length = 0;
            while (x >= 0 && y >= 0 && x < width && y < height && indexer[y, x] != 0)
            {
                length++;
                x += dx;
                y += dy;
            }
            return length;
        }
        double[] Face(int length, Func<int, int> run) =>
            [
                .. Enumerable
                    .Range(0, length / PixelsPerMm)
                    .Select(k => run(k * PixelsPerMm + PixelsPerMm / 2) / (double)PixelsPerMm),
            ];
        return
        [
            Face(width, s => Run(s, 0, 0, 1)),
            Face(height, s => Run(width - 1, s, -1, 0)),
            Face(width, s => Run(width - 1 - s, height - 1, 0, -1)),
            Face(height, s => Run(0, height - 1 - s, 1, 0)),
        ];
    }
}
