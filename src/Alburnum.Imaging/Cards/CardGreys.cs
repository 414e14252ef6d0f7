using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Photographs;

namespace Alburnum.Imaging.Cards;

/// <summary>Reads the patches of grey on a card.</summary>
internal static class CardGreys
{
    /// <summary>Samples of a patch, a row and a column of so many, within this part of it about its middle. Our own choice.</summary>
    private const int Across = 12;

    private const double InnerPart = 0.6;

    /// <summary>Mean of each patch as the photograph shows it, 0 to 255 a channel, in the order of <see cref="ScaleCard.Greys"/>.</summary>
    public static IReadOnlyList<(double R, double G, double B)> Of(Photograph photo, FoundCard card)
    {
        var map = photo.UprightToStored.After(card.Map(lens: null).Flat);
        return [.. ScaleCard.Greys.Select(patch => Mean(photo, map, patch))];
    }

    private static (double R, double G, double B) Mean(Photograph photo, Homography mmToStored, CardPatch patch)
    {
        var pixels = photo.Pixels;
        long r = 0,
            g = 0,
            b = 0;
        for (var j = 0; j < Across; j++)
        {
            for (var i = 0; i < Across; i++)
            {
                var at = mmToStored.Map(Inner(patch.From.X, patch.To.X, i), Inner(patch.From.Y, patch.To.Y, j));
                var x = Math.Clamp((int)at.X, 0, photo.StoredWidthPx - 1);
                var y = Math.Clamp((int)at.Y, 0, photo.StoredHeightPx - 1);
                var p = (y * photo.StoredStride) + (4 * x);
                (r, g, b) = (r + pixels[p], g + pixels[p + 1], b + pixels[p + 2]);
            }
        }
        const double All = Across * Across;
        return (r / All, g / All, b / All);
    }

    private static double Inner(double from, double to, int k) =>
        ((from + to) / 2) + ((to - from) * InnerPart * (((k + 0.5) / Across) - 0.5));
}
