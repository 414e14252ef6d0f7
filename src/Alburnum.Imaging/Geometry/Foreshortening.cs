namespace Alburnum.Imaging.Geometry;

/// <summary>How large, and how foreshortened in which direction, a flat thing is seen: the same of all that lie at one place in one plane, however they are turned.</summary>
/// <param name="LogPxPerMm">Logarithm of the scale, pixels per mm: the geometric mean of the greatest and the least.</param>
/// <param name="Along">Half the logarithm of the greatest over the least scale, times the cosine of twice the greatest's direction.</param>
/// <param name="Aslant">The same with the sine.</param>
internal readonly record struct Foreshortening(double LogPxPerMm, double Along, double Aslant)
{
    /// <summary>Of a disc, by its rim.</summary>
    public static Foreshortening Of(Ellipse rim, double diameterMm)
    {
        var ratio = Math.Log(rim.Major / rim.Minor) / 2;
        return new(
            Math.Log(Math.Sqrt(rim.Major * rim.Minor) * 2 / diameterMm),
            ratio * Math.Cos(2 * rim.Angle),
            ratio * Math.Sin(2 * rim.Angle)
        );
    }

    /// <summary>Of a rectangle, by its four corners, whichever of its sides is the first; null where they enclose nothing.</summary>
    public static Foreshortening? Of(IReadOnlyList<PointPx> corners, double widthMm, double heightMm)
    {
        var (a, b, c, d) = (corners[0], corners[1], corners[2], corners[3]);
        var (ux, uy) = ((b.X - a.X + c.X - d.X) / 2, (b.Y - a.Y + c.Y - d.Y) / 2);
        var (vx, vy) = ((d.X - a.X + c.X - b.X) / 2, (d.Y - a.Y + c.Y - b.Y) / 2);
        Foreshortening? Seen(double first, double second) =>
            Of(
                ((ux * ux) / (first * first)) + ((vx * vx) / (second * second)),
                ((ux * uy) / (first * first)) + ((vx * vy) / (second * second)),
                ((uy * uy) / (first * first)) + ((vy * vy) / (second * second))
            );
        var (lying, standing) = (Seen(widthMm, heightMm), Seen(heightMm, widthMm));
        return lying?.Ratio <= standing?.Ratio ? lying : standing;
    }

    /// <summary>Of the matrix of squared scales, px² per mm².</summary>
    /// <param name="xx">Its first diagonal element.</param>
    /// <param name="xy">Its other element.</param>
    /// <param name="yy">Its second diagonal element.</param>
    public static Foreshortening? Of(double xx, double xy, double yy)
    {
        var (mean, half) = ((xx + yy) / 2, double.Hypot((xx - yy) / 2, xy));
        if (!(mean - half > 0))
            return null;
        var ratio = Math.Log((mean + half) / (mean - half)) / 4;
        var direction = Math.Atan2(xy, (xx - yy) / 2);
        return new(
            Math.Log((mean + half) * (mean - half)) / 4,
            ratio * Math.Cos(direction),
            ratio * Math.Sin(direction)
        );
    }

    private double Ratio => double.Hypot(Along, Aslant);
}
