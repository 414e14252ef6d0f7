using Alburnum.Timber;

namespace Alburnum.Impregnation;

/// <summary>The upright box around a section, and which of its points are wood. Millimetres; the origin is the box's middle.</summary>
/// <remarks>A half-round piece lies with its flat face down.</remarks>
public static class SectionBox
{
    /// <summary>Width and height, mm.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A section of a kind that is not known here.</exception>
    public static (double WidthMm, double HeightMm) Of(Section section) =>
        section switch
        {
            RectangularSection sawn => (sawn.WidthMm, sawn.HeightMm),
            RoundSection round => (round.DiameterMm, round.DiameterMm),
            HalfRoundSection half => (half.DiameterMm, half.DiameterMm / 2),
            _ => throw new ArgumentOutOfRangeException(nameof(section), section, "Not a section known here."),
        };

    /// <summary>Height of the middle of the round above the box's middle, mm: 0, or half the height below for a half-round piece.</summary>
    public static double CentreYMm(Section section) => section is HalfRoundSection half ? -half.DiameterMm / 4 : 0;

    /// <summary>True where a point of the box is wood.</summary>
    /// <param name="section">The section.</param>
    /// <param name="xMm">To the right of the middle, mm.</param>
    /// <param name="yMm">Above the middle, mm.</param>
    public static bool Contains(Section section, double xMm, double yMm)
    {
        var (width, _) = Of(section);
        var y = yMm - CentreYMm(section);
        return section is RectangularSection || xMm * xMm + y * y <= width * width / 4;
    }

    /// <summary>The border of the wood at a depth, as corners clockwise from the upper left, or from the top of the round.</summary>
    /// <param name="section">The section.</param>
    /// <param name="depthMm">Depth below every face, mm; less than half the thickness.</param>
    public static IReadOnlyList<(double XMm, double YMm)> Border(Section section, double depthMm)
    {
        const int corners = 180;
        var (width, height) = Of(section);
        var (w, h, radius) = (width / 2 - depthMm, height / 2 - depthMm, width / 2 - depthMm);
        switch (section)
        {
            case RectangularSection:
                return [(-w, h), (w, h), (w, -h), (-w, -h)];
            case HalfRoundSection:
                // From where the flat face, moved in, meets the round, over the top, to the other end.
                var from = Math.Acos(Math.Min(1, depthMm / radius));
                return
                [
                    .. Enumerable
                        .Range(0, corners + 1)
                        .Select(i => Math.SinCos(-from + 2 * from * i / corners))
                        .Select(at => (radius * at.Sin, CentreYMm(section) + radius * at.Cos)),
                ];
            default:
                return
                [
                    .. Enumerable
                        .Range(0, corners)
                        .Select(i => Math.SinCos(2 * Math.PI * i / corners))
                        .Select(at => (radius * at.Sin, radius * at.Cos)),
                ];
        }
    }
}
