using Alburnum.Imaging.Cards;
using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Photographs;
using Alburnum.Imaging.Reading;

namespace Alburnum.Imaging.Stages;

/// <summary>A photograph in hand, and what is known of the section in it.</summary>
/// <param name="FileName">Name of the file, for messages.</param>
/// <param name="Photo">The photograph.</param>
/// <param name="Request">What is known, and asked.</param>
internal sealed record Scene(string FileName, Photograph Photo, ReadingRequest Request)
{
    /// <summary>Scale to read at, where the photograph offers it, pixels per mm.</summary>
    public const double ReadingPxPerMm = 6;

    /// <summary>The outline that the section has.</summary>
    public SectionShape Shape => Request.ShapeOrFromSection;

    /// <summary>The camera, as far as it is known.</summary>
    public Camera Camera => Camera.Usual(Photo.WidthPx, Photo.HeightPx);

    /// <summary>The card beside the section; null where none is seen.</summary>
    public FoundCard? Card { get; } = CardFinder.Find(Photo);

    /// <summary>Pixels of the photograph's longer side.</summary>
    public int LongSidePx => Math.Max(Photo.WidthPx, Photo.HeightPx);
}
