using System.Globalization;
using Alburnum.Records.Marks;
using Microsoft.AspNetCore.Http;

namespace Alburnum.Web.Marking;

/// <summary>
/// The sizes at which a photograph is offered for clicking. A click arrives in pixels of the screen, so the page must know how large
/// the picture is there: it holds one button for each size, the style sheet shows the one that fits, and its name says the width.
/// </summary>
internal static class PictureSizes
{
    private const string Prefix = "at";

    /// <summary>Longest sides offered, screen pixels; marking.css says on which screen each is shown.</summary>
    private static readonly int[] LongSides = [296, 328, 356, 388, 440, 560, 640, 960];

    /// <summary>Tall photographs are kept lower, so that they fit a screen.</summary>
    private const double TallShare = 0.8;

    /// <summary>Width and height of each size, the smallest first.</summary>
    public static IEnumerable<(int Width, int Height)> For(int widthPx, int heightPx) =>
        LongSides.Select(side => Size(side, widthPx, heightPx));

    /// <summary>The step of the style sheet that a width belongs to.</summary>
    public static int Step(int width, int widthPx, int heightPx) =>
        LongSides.First(side => Size(side, widthPx, heightPx).Width == width);

    /// <summary>Where a picture was clicked, in pixels of the photograph; null where none was.</summary>
    /// <remarks>A browser sends 0,0 for a button pressed by key, so that place is no click.</remarks>
    public static MarkedPoint? Clicked(IQueryCollection query, int widthPx, int heightPx)
    {
        foreach (var (width, height) in For(widthPx, heightPx))
        {
            var name = $"{Prefix}{width}";
            if (
                int.TryParse(query[$"{name}.x"], NumberStyles.None, CultureInfo.InvariantCulture, out var x)
                && int.TryParse(query[$"{name}.y"], NumberStyles.None, CultureInfo.InvariantCulture, out var y)
                && (x, y) != (0, 0)
                && x < width
                && y < height
            )
                return new(Math.Round((x + 0.5) * widthPx / width, 1), Math.Round((y + 0.5) * heightPx / height, 1));
        }
        return null;
    }

    private static (int Width, int Height) Size(int side, int widthPx, int heightPx) =>
        widthPx >= heightPx
            ? (side, (int)Math.Round((double)side * heightPx / widthPx))
            : ((int)Math.Round(TallShare * side), (int)Math.Round(TallShare * side * heightPx / widthPx));
}
