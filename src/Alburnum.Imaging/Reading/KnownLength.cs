using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Outcomes;
using Alburnum.Timber;

namespace Alburnum.Imaging.Reading;

/// <summary>The section's true size, from a known length in the photograph.</summary>
/// <param name="Section">The section as large as it is.</param>
/// <param name="SizeShare">Standard uncertainty of its size, as a share.</param>
/// <param name="IsMeasured">Whether it comes from a scale bar; the nominal size stands otherwise.</param>
internal sealed record KnownLength(Section Section, double SizeShare, bool IsMeasured)
{
    /// <summary>Standard uncertainty of each end of a scale bar pointed out by hand, pixels. Our own choice.</summary>
    internal const double EndPx = 1.5;

    /// <summary>Standard uncertainty of a nominal size, mm. Our own estimate.</summary>
    internal const double NominalMm = 0.3;

    /// <summary>A known length and a nominal size farther apart than this mean a slip of the hand: by one part in so many. Our own choice.</summary>
    private const int ApartPart = 4;

    /// <summary>Takes the size from the scale bar where there is one, from the nominal size otherwise.</summary>
    /// <param name="request">With section and scale bar.</param>
    /// <param name="nominal">Map laid with the nominal size.</param>
    public static Outcome<KnownLength, KnownLengthDisagrees> Of(ReadingRequest request, SectionMap nominal)
    {
        if (request.ScaleBar is not { } bar)
            return new KnownLength(request.Section, NominalMm / request.Section.SizesMm.Min(), IsMeasured: false);
        var (from, to) = (nominal.ToMm(bar.From), nominal.ToMm(bar.To));
        var factor = bar.LengthMm / double.Hypot(to.X - from.X, to.Y - from.Y);
        if (!(Math.Abs(factor - 1) <= 1.0 / ApartPart))
            return new KnownLengthDisagrees(ApartPart);
        var section = request.Section.Scaled(factor);
        var lengthPx = double.Hypot(bar.To.X - bar.From.X, bar.To.Y - bar.From.Y);
        return new KnownLength(section, Math.Sqrt(2) * EndPx / lengthPx, IsMeasured: true);
    }
}
