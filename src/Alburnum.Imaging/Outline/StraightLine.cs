using Alburnum.Imaging.Geometry;

namespace Alburnum.Imaging.Outline;

/// <summary>The line nearest to a side's points once a lens is undone.</summary>
/// <param name="At">A point on it.</param>
/// <param name="Dx">Direction.</param>
/// <param name="Dy">Direction.</param>
internal readonly record struct StraightLine(PointPx At, double Dx, double Dy)
{
    public static StraightLine Through(BowedSide side, RadialLens lens)
    {
        double sw = 0,
            sx = 0,
            sy = 0,
            xx = 0,
            xy = 0,
            yy = 0;
        for (var i = 0; i < side.Points.Length; i++)
        {
            var p = lens.Straight(side.Points[i]);
            var w = side.Weights[i];
            (sw, sx, sy) = (sw + w, sx + (w * p.X), sy + (w * p.Y));
            (xx, xy, yy) = (xx + (w * p.X * p.X), xy + (w * p.X * p.Y), yy + (w * p.Y * p.Y));
        }
        (sx, sy) = (sx / sw, sy / sw);
        (xx, xy, yy) = ((xx / sw) - (sx * sx), (xy / sw) - (sx * sy), (yy / sw) - (sy * sy));
        var angle = 0.5 * Math.Atan2(2 * xy, xx - yy);
        return new(new(sx, sy), Math.Cos(angle), Math.Sin(angle));
    }

    /// <summary>Distance of a point to one side of the line, px.</summary>
    public double Off(PointPx p) => (Dx * (p.Y - At.Y)) - (Dy * (p.X - At.X));

    /// <summary>Distance of a point along the line, px.</summary>
    public double Along(PointPx p) => (Dx * (p.X - At.X)) + (Dy * (p.Y - At.Y));

    public PointPx Meet(StraightLine other)
    {
        var cross = (Dx * other.Dy) - (Dy * other.Dx);
        var t = (((other.At.X - At.X) * other.Dy) - ((other.At.Y - At.Y) * other.Dx)) / cross;
        return new(At.X + (t * Dx), At.Y + (t * Dy));
    }
}
