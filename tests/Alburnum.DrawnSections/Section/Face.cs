namespace Alburnum.DrawnSections;

/// <summary>One side of a section, run clockwise as the photograph shows it (y points down).</summary>
public abstract record Face
{
    public abstract double LengthMm { get; }

    /// <summary>Whether it runs into itself.</summary>
    public virtual bool IsClosed => false;

    /// <summary>The point of the ideal face at a distance along it, mm.</summary>
    public abstract Point At(double alongMm);

    /// <summary>Unit vector into the wood.</summary>
    public abstract Point Inward(double alongMm);

    /// <summary>Distance along the face and depth below it of any point, mm.</summary>
    public abstract (double AlongMm, double DepthMm) Locate(double x, double y);
}

/// <summary>A flat side.</summary>
public sealed record FlatFace(Point From, Point To) : Face
{
    private readonly Point _along = (To - From) * (1 / (To - From).Length);

    public override double LengthMm { get; } = (To - From).Length;

    public override Point At(double alongMm) => From + _along * alongMm;

    public override Point Inward(double alongMm) => new(-_along.Y, _along.X);

    public override (double AlongMm, double DepthMm) Locate(double x, double y)
    {
        var dx = x - From.X;
        var dy = y - From.Y;
        return (dx * _along.X + dy * _along.Y, -dx * _along.Y + dy * _along.X);
    }
}

/// <summary>A rounded side: an arc from one angle through a positive sweep, radians.</summary>
public sealed record RoundFace(Point Centre, double RadiusMm, double StartAngle, double SweepAngle) : Face
{
    public override double LengthMm => RadiusMm * SweepAngle;

    public override bool IsClosed => SweepAngle > 6;

    public override Point At(double alongMm) => Centre + Point.Towards(StartAngle + alongMm / RadiusMm) * RadiusMm;

    public override Point Inward(double alongMm) => Point.Towards(StartAngle + alongMm / RadiusMm) * -1;

    public override (double AlongMm, double DepthMm) Locate(double x, double y)
    {
        var dx = x - Centre.X;
        var dy = y - Centre.Y;
        var angle = Math.Atan2(dy, dx) - StartAngle;
        // The cut is put opposite the arc, so that points off its ends fall to the nearer end.
        var spare = (2 * Math.PI - SweepAngle) / 2;
        while (angle < -spare)
            angle += 2 * Math.PI;
        while (angle >= 2 * Math.PI - spare)
            angle -= 2 * Math.PI;
        return (angle * RadiusMm, RadiusMm - Math.Sqrt(dx * dx + dy * dy));
    }
}
