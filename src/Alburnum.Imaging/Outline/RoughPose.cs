using Alburnum.Imaging.Geometry;

namespace Alburnum.Imaging.Outline;

/// <summary>Where a section roughly lies in a picture: a rectangle or an ellipse.</summary>
/// <param name="Centre">Centre, px.</param>
/// <param name="HalfWidth">Half its width, px.</param>
/// <param name="HalfHeight">Half its height, px.</param>
/// <param name="Angle">Direction of its width, radians.</param>
/// <param name="IsRound">Whether it is an ellipse.</param>
internal readonly record struct RoughPose(
    PointPx Centre,
    double HalfWidth,
    double HalfHeight,
    double Angle,
    bool IsRound
)
{
    private const int RimPoints = 20;

    /// <summary>Corners of the rectangle, or a polygon about the ellipse, clockwise as displayed.</summary>
    public PointPx[] Points()
    {
        if (!IsRound)
            return
            [
                At(-HalfWidth, -HalfHeight),
                At(HalfWidth, -HalfHeight),
                At(HalfWidth, HalfHeight),
                At(-HalfWidth, HalfHeight),
            ];
        var points = new PointPx[RimPoints];
        for (var i = 0; i < RimPoints; i++)
        {
            var (sin, cos) = Math.SinCos(2 * Math.PI * i / RimPoints);
            points[i] = At(HalfWidth * cos, HalfHeight * sin);
        }
        return points;
    }

    /// <summary>The ellipse of a round one.</summary>
    public Ellipse Ellipse =>
        new(
            Centre,
            Math.Max(HalfWidth, HalfHeight),
            Math.Min(HalfWidth, HalfHeight),
            Angle + (HalfWidth >= HalfHeight ? 0 : Math.PI / 2)
        );

    /// <summary>The same in a picture of another scale.</summary>
    public RoughPose Scaled(double by) =>
        this with
        {
            Centre = new(Centre.X * by, Centre.Y * by),
            HalfWidth = HalfWidth * by,
            HalfHeight = HalfHeight * by,
        };

    /// <summary>Number of measures that <see cref="Moved"/> changes.</summary>
    public const int Measures = 5;

    /// <summary>The same with one of its measures changed: centre across, centre down, half width, half height, or turned so that its ends move by as much.</summary>
    /// <param name="measure">0 to 4.</param>
    /// <param name="byPx">By how much, px.</param>
    public RoughPose Moved(int measure, double byPx) =>
        measure switch
        {
            0 => this with { Centre = new(Centre.X + byPx, Centre.Y) },
            1 => this with { Centre = new(Centre.X, Centre.Y + byPx) },
            2 => this with { HalfWidth = HalfWidth + byPx },
            3 => this with { HalfHeight = HalfHeight + byPx },
            _ => this with { Angle = Angle + (byPx / Math.Max(HalfWidth, HalfHeight)) },
        };

    private PointPx At(double along, double across)
    {
        var (sin, cos) = Math.SinCos(Angle);
        return new(Centre.X + (along * cos) - (across * sin), Centre.Y + (along * sin) + (across * cos));
    }
}
