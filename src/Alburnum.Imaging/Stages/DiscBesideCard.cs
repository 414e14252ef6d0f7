using Alburnum.Imaging.Cards;
using Alburnum.Imaging.Geometry;

namespace Alburnum.Imaging.Stages;

/// <summary>How a round section lies before the camera, told by the card that lies level beside it.</summary>
internal static class DiscBesideCard
{
    /// <summary>Points of the rim that are carried to the card's plane.</summary>
    private const int RimPoints = 72;

    /// <summary>The rim is a circle there where its axes differ by no more than this share; where it is none, the card is not level with it. Our own choice.</summary>
    private const double MostOval = 0.03;

    /// <summary>Standard uncertainty of the angle between card and cut face, degrees. Our own choice.</summary>
    private const double ParallelDegrees = 3;

    /// <summary>The map from the disc in mm to the photograph, and the standard uncertainty of depth that it leaves, as a share of the depth; null where the card does not tell.</summary>
    public static (Homography MmToPx, double DepthShare)? View(
        FoundCard card,
        Ellipse rim,
        double diameterMm,
        Camera camera
    )
    {
        if (Circle(card, rim) is not { } circle)
            return null;
        var r = diameterMm / 2;
        var mmPerMm = Math.Sqrt(circle.Major * circle.Minor) / r;
        // Turned so that directions on the section keep their place in the picture.
        var side = (From: card.MarksPx[0], To: card.MarksPx[1]);
        var (sin, cos) = Math.SinCos(Math.Atan2(side.To.Y - side.From.Y, side.To.X - side.From.X));
        (sin, cos) = (mmPerMm * sin, mmPerMm * cos);
        var discToCard = new Homography(
            cos,
            sin,
            circle.Centre.X - (r * (cos + sin)),
            -sin,
            cos,
            circle.Centre.Y - (r * (cos - sin)),
            0,
            0,
            1
        );
        var squeeze = 2 * Math.Sin(ParallelDegrees * Math.PI / 180) * rim.Major / camera.FocalPx;
        return (card.Map(lens: null).Flat.After(discToCard), squeeze);
    }

    /// <summary>The rim in the card's plane, in mm; null where it is no circle there.</summary>
    public static Ellipse? Circle(FoundCard card, Ellipse rim)
    {
        var onCard = card.Map(lens: null);
        PointPx[] points =
        [
            .. rim.Stations(RimPoints).Select(station => onCard.ToMm(station.At)).Select(mm => new PointPx(mm.X, mm.Y)),
        ];
        var weights = new double[points.Length];
        Array.Fill(weights, 1);
        return Ellipse.Fit(points, weights).Has(out var seen, out _) && seen.Minor >= (1 - MostOval) * seen.Major
            ? seen
            : null;
    }
}
