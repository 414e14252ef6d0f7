namespace Alburnum.Imaging.Geometry;

/// <summary>A camera as far as a photograph shows it.</summary>
/// <param name="WidthPx">Width of the upright photograph.</param>
/// <param name="HeightPx">Its height.</param>
/// <param name="FocalPx">Focal length, pixels.</param>
internal readonly record struct Camera(int WidthPx, int HeightPx, double FocalPx)
{
    /// <summary>Focal length of a usual camera, as a share of the photograph's longer side, where the file does not say. Our own choice.</summary>
    private const double FocalPerLongSide = 0.95;

    /// <summary>A usual camera.</summary>
    public static Camera Usual(int widthPx, int heightPx) =>
        new(widthPx, heightPx, FocalPerLongSide * Math.Max(widthPx, heightPx));

    /// <summary>Where the camera's axis meets the photograph: its middle.</summary>
    public PointPx Axis => new(WidthPx / 2.0, HeightPx / 2.0);
}

/// <summary>Chooses how a round section lay before the camera.</summary>
internal static class DiscView
{
    /// <summary>Natural change of depth from one side of a round to the other: standard deviation, as a share of the mean depth. Our own choice.</summary>
    private const double OneSidedShare = 0.08;

    /// <summary>With fewer points along the front than this, a pose is not chosen. Our own choice.</summary>
    private const int LeastPoints = 8;

    /// <summary>A squeeze of the near against the far half, as a share of the depth, that is too small to matter. Our own choice.</summary>
    private const double LeastSqueeze = 0.01;

    /// <summary>
    /// Where no pose is chosen, the squeeze over the first is uncertain; where one is, over the second at least, since the focal length is not known.
    /// Our own choice.
    /// </summary>
    private const double UnchosenPart = 3;

    private const double ChosenPart = 8;

    /// <summary>A pose believed this little more than the other, as a difference of probabilities, is none. Our own choice.</summary>
    private const double LeastLean = 0.05;

    /// <summary>The map from the disc in mm to the photograph that makes the front most even from one side to the other.</summary>
    /// <param name="rim">The rim.</param>
    /// <param name="diameterMm">Diameter, mm.</param>
    /// <param name="camera">The camera.</param>
    /// <param name="front">Points along the front, in the photograph. Empty where there is none.</param>
    /// <returns>The map, and the standard uncertainty of depth that the choice leaves, as a share of the depth.</returns>
    public static (Homography MmToPx, double DepthShare) Choose(
        Ellipse rim,
        double diameterMm,
        Camera camera,
        IReadOnlyList<PointPx> front
    )
    {
        var flat = rim.FromDisc(diameterMm);
        var (axis, focalPx) = (camera.Axis, camera.FocalPx);
        // The squeeze of near against far half, if the pose is taken at its word.
        var tilt = Math.Sqrt(Math.Max(0, 1 - (rim.Minor * rim.Minor / (rim.Major * rim.Major))));
        var squeeze = 2 * tilt * rim.Major / focalPx;
        if (front.Count < LeastPoints || squeeze < LeastSqueeze)
            return (flat, squeeze / UnchosenPart);
        var (first, second) = DiscPose.Both(rim, diameterMm, axis, focalPx);
        var (unevenFirst, unevenSecond) = (Uneven(first), Uneven(second));
        var spread = 2 * OneSidedShare * OneSidedShare;
        var belief = 1 / (1 + Math.Exp(((unevenFirst * unevenFirst) - (unevenSecond * unevenSecond)) / spread));
        // Half believed means half as strong: the same pose from a longer lens.
        var lean = (2 * belief) - 1;
        var left = squeeze * Math.Sqrt(belief * (1 - belief)) / 2 + (squeeze / ChosenPart);
        if (Math.Abs(lean) < LeastLean)
            return (flat, left);
        var longer = DiscPose.Both(rim, diameterMm, axis, focalPx / Math.Abs(lean));
        // Which of the two is which may swap as the lens grows: take the one nearer the believed pose.
        var believed = lean > 0 ? first : second;
        var chosen = Apart(longer.First, believed) < Apart(longer.Second, believed) ? longer.First : longer.Second;
        return (chosen, left);

        // Amplitude of the once-round part of the depth, over the mean depth.
        double Uneven(Homography map)
        {
            var back = map.Inverse();
            var r = diameterMm / 2;
            double sum = 0,
                cos = 0,
                sin = 0;
            foreach (var p in front)
            {
                var mm = back.Map(p);
                var (x, y) = (mm.X - r, mm.Y - r);
                var distance = double.Hypot(x, y);
                var depth = r - distance;
                (sum, cos, sin) = (sum + depth, cos + (depth * x / distance), sin + (depth * y / distance));
            }
            return sum > 0 ? 2 * double.Hypot(cos, sin) / sum : 0;
        }

        double Apart(Homography a, Homography b)
        {
            var (p, q) = (a.Map(diameterMm / 2, diameterMm / 2), b.Map(diameterMm / 2, diameterMm / 2));
            return double.Hypot(p.X - q.X, p.Y - q.Y);
        }
    }
}
