namespace Alburnum.Impregnation.Prediction;

/// <summary>Where a single way lies in a section: from a depth inwards, its breadth falling evenly.</summary>
/// <param name="FromMm">Depth below the face at which it begins, mm.</param>
/// <param name="LengthMm">Its length, mm. Above 0.</param>
/// <param name="Narrowing">Share of its breadth that it has lost at its end, 0 to 1.</param>
/// <remarks>A single way narrows as the whole piece does in the mean, a strip of the section in its own manner: what lies at a depth of the one is laid into the breadth that the other has there.</remarks>
internal readonly record struct Lane(double FromMm, double LengthMm, double Narrowing)
{
    // Pieces from the face to the zone's end, the first of them thin, as product may lie in the face itself; and from there to the strip's end.
    private const int Pieces = 4;

    /// <summary>What a way holds, laid into a strip: voids in the zone and in all, mm².</summary>
    /// <param name="way">What it holds.</param>
    /// <param name="strip">The strip.</param>
    /// <param name="zoneMm">Depth of the zone below the face, mm.</param>
    /// <param name="toMm">Depth below the face down to which it is laid, mm; at most the strip's end.</param>
    public (double InZone, double All) Lay(WayReading way, SectionStrip strip, double zoneMm, double toMm)
    {
        if (toMm <= FromMm)
            return (0, 0);
        var zone = Math.Clamp(zoneMm, FromMm, toMm);
        var volume = LengthMm * (1 - Narrowing / 2);
        var isEven = Narrowing <= 0 && double.IsPositiveInfinity(strip.RadiusMm);
        double depth = FromMm,
            before = 0,
            sum = 0,
            inZone = 0;
        for (var k = 1; k <= 2 * Pieces; k++)
        {
            if (isEven && k % Pieces != 0)
                continue;
            var next =
                k <= Pieces
                    ? FromMm + (zone - FromMm) * k * k / (Pieces * Pieces)
                    : zone + (toMm - zone) * (k - Pieces) / Pieces;
            if (next > depth)
            {
                var kept = way.KeptWithin((next - FromMm) / LengthMm);
                var middle = (depth + next) / 2;
                sum += (kept - before) * strip.BreadthAtMm(middle) / (1 - Narrowing * (middle - FromMm) / LengthMm);
                (depth, before) = (next, kept);
            }
            if (k == Pieces)
                inZone = sum;
        }
        return (volume * inZone, volume * sum);
    }
}
