using System.Globalization;
using Alburnum.Imaging.Cards;

namespace Alburnum.DrawnSections;

/// <summary>Scenes of a stated difficulty with the printed card beside the piece, the camera far enough away to see both.</summary>
public static class CardScenes
{
    /// <summary>Least distance of what is to be seen from the picture's edge, as a share of its shorter side.</summary>
    private const double Margin = 0.02;

    /// <summary>Each step back of the camera.</summary>
    private const double Step = 0.97;

    /// <summary>The scene of a stratum and a seed.</summary>
    /// <param name="stratum">How difficult it is to read.</param>
    /// <param name="seed">Any number; the same number always gives the same scene.</param>
    /// <param name="belowMm">How far the card lies below the cut face, mm; 0 level with it.</param>
    /// <param name="megapixels">Size of the photograph.</param>
    public static SectionScene Of(Stratum stratum, int seed, double belowMm, double megapixels) =>
        Beside(
            StratifiedScenes.Of(stratum, seed, [], megapixels),
            seed,
            belowMm,
            string.Create(
                CultureInfo.InvariantCulture,
                $"card-{stratum.ToString().ToLowerInvariant()}-{seed:000}-{belowMm:0}-{megapixels:0.0}"
            )
        );

    /// <summary>A scene with the card laid on one side of the piece, and the camera moved back.</summary>
    public static SectionScene Beside(SectionScene scene, int seed, double belowMm, string name)
    {
        var random = new Random((seed * 7907) + 23);
        var half = scene.Shape.HalfExtent;
        var angle = random.Between(-0.2, 0.2) + (random.Next(4) * Math.PI / 2);
        var (sin, cos) = Math.SinCos(angle);
        var (w, h) = (ScaleCard.WidthMm / 2, ScaleCard.HeightMm / 2);
        var reach = new Point(Math.Abs(w * cos) + Math.Abs(h * sin), Math.Abs(w * sin) + Math.Abs(h * cos));
        var gap = random.Between(5, 15) + belowMm;
        var along = random.Between(-0.3, 0.3);
        var side = random.Chance(0.5) ? 1 : -1;
        var centre = random.Chance(0.5)
            ? new Point(side * (half.X + gap + reach.X), along * half.Y)
            : new Point(along * half.X, side * (half.Y + gap + reach.Y));
        var card = new LaidCard(centre, angle, belowMm, (seed * 47) + 11);
        var aim = centre * 0.5;
        var lens = scene.Lens with { AimMm = aim, PixelsPerMm = 3 * scene.Lens.PixelsPerMm };
        while (!Sees(lens, card, half))
            lens = lens with { PixelsPerMm = Step * lens.PixelsPerMm };
        return scene with { Name = name, Card = card, Lens = lens };
    }

    private static bool Sees(Lens lens, LaidCard card, Point half)
    {
        Point[] section = [new(-half.X, -half.Y), new(half.X, -half.Y), half, new(-half.X, half.Y)];
        var margin = Margin * Math.Min(lens.WidthPx, lens.HeightPx);
        return section
            .Concat(card.Corners)
            .Select(lens.Project)
            .All(at => at.X > margin && at.Y > margin && at.X < lens.WidthPx - margin && at.Y < lens.HeightPx - margin);
    }
}
