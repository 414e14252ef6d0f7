namespace Alburnum.DrawnSections;

/// <summary>Where heartwood truly begins.</summary>
public static class HeartwoodTruth
{
    private const int Points = 720;

    /// <summary>The border all round the pith, section coordinates, mm; it may run outside the section. Empty without heartwood.</summary>
    public static IReadOnlyList<Point> BorderMm(EndGrain grain) =>
        grain.HeartRadiusMm <= 0
            ? []
            : [.. Enumerable.Range(0, Points).Select(k => OnRay(grain, Point.Towards(2 * Math.PI * k / Points)))];

    /// <summary>The same on the upright photograph, pixels.</summary>
    public static IReadOnlyList<Point> BorderPx(SectionScene scene) =>
        [.. BorderMm(scene.Grain).Select(scene.Lens.Project)];

    private static Point OnRay(EndGrain grain, Point ray)
    {
        var (low, high) = (0.5 * grain.HeartRadiusMm, 1.5 * grain.HeartRadiusMm);
        for (var k = 0; k < 30; k++)
        {
            var middle = (low + high) / 2;
            var at = grain.PithMm + ray * middle;
            if (grain.SapwoodMm(at.X, at.Y) < 0)
                low = middle;
            else
                high = middle;
        }
        return grain.PithMm + ray * ((low + high) / 2);
    }
}
