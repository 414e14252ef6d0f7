using System.Globalization;
using Alburnum.Imaging.Geometry;
using Alburnum.Timber;

namespace Alburnum.Imaging;

/// <summary>The section's true size, from a known length in the photograph.</summary>
/// <param name="Section">The section as large as it is.</param>
/// <param name="ScaleShare">Standard uncertainty of its size, as a share.</param>
/// <param name="Note">What was found, in words; empty where the nominal size stands.</param>
internal sealed record KnownLength(Section Section, double ScaleShare, string Note)
{
    /// <summary>Standard uncertainty of each end of a scale bar pointed out by hand, pixels.</summary>
    private const double EndPx = 1.5;

    /// <summary>A known length and a nominal size farther apart than this mean a slip of the hand.</summary>
    private const double MostApart = 0.25;

    /// <summary>Takes the size from the scale bar where there is one; null where it cannot be right.</summary>
    /// <param name="request">With section and scale bar.</param>
    /// <param name="nominal">Map laid with the nominal size.</param>
    public static KnownLength? Of(ReadingRequest request, SectionMap nominal)
    {
        if (request.ScaleBar is not { } bar)
            return new(request.Section, request.SectionUncertaintyMm / request.Section.SizesMm.Min(), "");
        var (from, to) = (nominal.ToMm(bar.From), nominal.ToMm(bar.To));
        var factor = bar.LengthMm / double.Hypot(to.X - from.X, to.Y - from.Y);
        if (!(Math.Abs(factor - 1) <= MostApart))
            return null;
        var section = request.Section.Scaled(factor);
        var lengthPx = double.Hypot(bar.To.X - bar.From.X, bar.To.Y - bar.From.Y);
        var note = string.Create(
            CultureInfo.InvariantCulture,
            $"By the known length the section is {section.Label}; depths are to that scale."
        );
        return new(section, Math.Sqrt(2) * EndPx / lengthPx, note);
    }

    /// <summary>What to say of a length that cannot be right.</summary>
    public const string NotBelieved =
        "Not determined: the known length and the nominal size differ by more than a quarter. Check the two points, the length and the size.";
}
