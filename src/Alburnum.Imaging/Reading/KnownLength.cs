using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Outcomes;
using Alburnum.Measures;
using Alburnum.Timber;

namespace Alburnum.Imaging.Reading;

/// <summary>The section's true size, and what it is known by.</summary>
/// <param name="Section">The section as large as it is.</param>
/// <param name="SizeShare">Standard uncertainty of its size, as a share.</param>
/// <param name="Basis">What it is known by.</param>
internal sealed record KnownLength(Section Section, double SizeShare, ScaleBasis Basis)
{
    /// <summary>Standard uncertainty of each end of a scale bar pointed out by hand, pixels. Our own choice.</summary>
    internal const double EndPx = 1.5;

    /// <summary>Standard uncertainty of a size measured on the piece, mm. Our own estimate.</summary>
    internal const double MeasuredMm = 0.3;

    /// <summary>
    /// Standard uncertainty of a nominal size of up to 100 mm, and of a larger one, mm: root mean square over −1 to +3 mm, and over −2 to +4 mm, every deviation as likely
    /// (EN 336:2003, tolerance class 1, read at second hand; JCGM 100:2008, 4.3.7).
    /// </summary>
    internal const double NominalMm = 1.5;

    internal const double LargeNominalMm = 2;

    private const double LargeMm = 100;

    /// <summary>A known length and a nominal size farther apart than this mean a slip of the hand: by one part in so many. Our own choice.</summary>
    private const int ApartPart = 4;

    /// <summary>A card and a size farther apart than so many standard uncertainties of both together contradict each other. Our own choice.</summary>
    private const double MostApart = 3;

    /// <summary>The nominal size is no farther from the card's than so many standard uncertainties of the card's. Our own choice.</summary>
    private const double ToNominal = 2;

    /// <summary>Which cause of uncertainty the size is.</summary>
    public UncertaintyCause Cause =>
        Basis switch
        {
            ScaleBasis.NominalSize => DepthCauses.NominalSize,
            ScaleBasis.Card => DepthCauses.CardSize,
            _ => DepthCauses.KnownSize,
        };

    /// <summary>What the card beside the section says against its size; null where there is no card, or it agrees.</summary>
    public CardDisagrees? Card { get; private init; }

    /// <summary>The same beside a card: where they agree, the card is taken in place of a nominal size that is less sure.</summary>
    public KnownLength Beside(CardSize card)
    {
        var together = double.Hypot(SizeShare, card.SizeShare);
        if (card.ApartShare > MostApart * together)
            return this with { Card = new(card.Section, Section) };
        // A card a little below the face would pass unseen: what it differs by is held against it.
        var share = Math.Max(card.SizeShare, card.ApartShare / ToNominal);
        return Basis == ScaleBasis.NominalSize && share < SizeShare ? new(card.Section, share, ScaleBasis.Card) : this;
    }

    /// <summary>Takes the size as measured, or from the scale bar, where there is one of these; from the nominal size otherwise.</summary>
    /// <param name="request">With section, measured size and scale bar.</param>
    /// <param name="nominal">Map laid with the nominal size.</param>
    public static Outcome<KnownLength, KnownLengthDisagrees> Of(ReadingRequest request, SectionMap nominal)
    {
        if (request.MeasuredSize is { } measured)
            return new KnownLength(measured, MeasuredMm / measured.SizesMm.Min(), ScaleBasis.MeasuredSize);
        // A core is as wide as its borer, and its length is measured.
        if (request.ShapeOrFromSection == SectionShape.CoreStrip && request.ScaleBar is null)
            return new KnownLength(
                request.Section,
                MeasuredMm / request.Section.SizesMm.Min(),
                ScaleBasis.MeasuredSize
            );
        if (request.ScaleBar is not { } bar)
            return new KnownLength(request.Section, NominalShare(request.Section), ScaleBasis.NominalSize);
        var (from, to) = (nominal.ToMm(bar.From), nominal.ToMm(bar.To));
        var factor = bar.LengthMm / double.Hypot(to.X - from.X, to.Y - from.Y);
        if (!(Math.Abs(factor - 1) <= 1.0 / ApartPart))
            return new KnownLengthDisagrees(ApartPart);
        var section = request.Section.Scaled(factor);
        var lengthPx = double.Hypot(bar.To.X - bar.From.X, bar.To.Y - bar.From.Y);
        return new KnownLength(section, Math.Sqrt(2) * EndPx / lengthPx, ScaleBasis.KnownLength);
    }

    private static double NominalShare(Section section) =>
        section.SizesMm.Max(mm => (mm > LargeMm ? LargeNominalMm : NominalMm) / mm);
}
