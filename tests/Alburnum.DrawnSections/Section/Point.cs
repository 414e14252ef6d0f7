namespace Alburnum.DrawnSections;

/// <summary>A point or direction; millimetres on the section (origin at its centre, y down), or pixels on a picture.</summary>
public readonly record struct Point(double X, double Y)
{
    public double Length => Math.Sqrt(X * X + Y * Y);

    public static Point operator +(Point a, Point b) => new(a.X + b.X, a.Y + b.Y);

    public static Point operator -(Point a, Point b) => new(a.X - b.X, a.Y - b.Y);

    public static Point operator *(Point a, double k) => new(a.X * k, a.Y * k);

    public static double Dot(Point a, Point b) => a.X * b.X + a.Y * b.Y;

    public static Point Towards(double angle) => new(Math.Cos(angle), Math.Sin(angle));
}
