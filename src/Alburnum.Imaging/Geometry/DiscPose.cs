using MathNet.Numerics.LinearAlgebra;

namespace Alburnum.Imaging.Geometry;

/// <summary>How a disc lies before the camera, from the ellipse that its rim makes in the photograph.</summary>
/// <remarks>
/// A tilted disc shows one of two poses that the rim alone cannot tell apart: the near edge could be either of two opposite ones.
/// Both have the same rim but squeeze the near and the far half differently; a depth of 10 mm on a disc tilted by 25° differs by about a millimetre.
/// Q. Chen, H. Wu and T. Wada, Camera calibration with two arbitrary coplanar circles (ECCV 2004), section 2.
/// </remarks>
internal static class DiscPose
{
    /// <summary>Both maps from the disc in mm (its box's top left at 0, 0) to the photograph.</summary>
    /// <param name="rim">The rim.</param>
    /// <param name="diameterMm">Diameter, mm.</param>
    /// <param name="axis">Where the camera's axis meets the photograph: its middle.</param>
    /// <param name="focalPx">Focal length, pixels.</param>
    public static (Homography First, Homography Second) Both(
        Ellipse rim,
        double diameterMm,
        PointPx axis,
        double focalPx
    )
    {
        var conic = Conic(rim, axis, focalPx);
        var decomposed = conic.Evd(Symmetricity.Symmetric);
        var order = Enumerable.Range(0, 3).OrderByDescending(k => decomposed.EigenValues[k].Real).ToArray();
        var l = order.Select(k => decomposed.EigenValues[k].Real).ToArray();
        var e = order.Select(k => decomposed.EigenVectors.Column(k)).ToArray();
        var (a, c) = (Math.Sqrt(Math.Max(0, (l[0] - l[1]) / (l[0] - l[2]))), Math.Sqrt((l[1] - l[2]) / (l[0] - l[2])));
        var r = diameterMm / 2;
        var z = l[1] * r / Math.Sqrt(-l[0] * l[2]);
        Homography With(int sign)
        {
            var normal = (e[0] * (sign * a)) + (e[2] * c);
            var centre = ((e[0] * (sign * a * l[2] / l[1])) + (e[2] * (c * l[0] / l[1]))) * z;
            if (centre[2] < 0)
                centre = -centre;
            // Axes in the disc's plane that look as little turned as can be.
            var x = Vector<double>.Build.DenseOfArray([1, 0, 0]);
            x = (x - (normal * normal[0])).Normalize(2);
            var y = Cross(normal, x);
            if (y[1] < 0)
                y = -y;
            return new Homography(focalPx, 0, axis.X, 0, focalPx, axis.Y, 0, 0, 1).After(
                new Homography(
                    x[0],
                    y[0],
                    centre[0] - (r * (x[0] + y[0])),
                    x[1],
                    y[1],
                    centre[1] - (r * (x[1] + y[1])),
                    x[2],
                    y[2],
                    centre[2] - (r * (x[2] + y[2]))
                )
            );
        }
        return (With(1), With(-1));
    }

    // The rim's cone of rays, as a symmetric form that is negative inside it.
    private static Matrix<double> Conic(Ellipse rim, PointPx axis, double focalPx)
    {
        var (sin, cos) = Math.SinCos(rim.Angle);
        var (p, q) = (focalPx / rim.Major, focalPx / rim.Minor);
        var (x, y) = ((rim.Centre.X - axis.X) / focalPx, (rim.Centre.Y - axis.Y) / focalPx);
        // (p·u)² + (q·v)² = 1 with u, v along the ellipse's axes about its centre.
        var a = (p * p * cos * cos) + (q * q * sin * sin);
        var b = ((p * p) - (q * q)) * sin * cos;
        var c = (p * p * sin * sin) + (q * q * cos * cos);
        var d = -(a * x) - (b * y);
        var e = -(b * x) - (c * y);
        var f = (a * x * x) + (2 * b * x * y) + (c * y * y) - 1;
        return Matrix<double>.Build.DenseOfArray(
            new[,]
            {
                { a, b, d },
                { b, c, e },
                { d, e, f },
            }
        );
    }

    private static Vector<double> Cross(Vector<double> a, Vector<double> b) =>
        Vector<double>.Build.DenseOfArray([
            (a[1] * b[2]) - (a[2] * b[1]),
            (a[2] * b[0]) - (a[0] * b[2]),
            (a[0] * b[1]) - (a[1] * b[0]),
        ]);
}
