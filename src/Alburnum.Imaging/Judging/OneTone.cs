using Alburnum.Imaging.Colour;

namespace Alburnum.Imaging.Judging;

/// <summary>Whether a section shows no colour, only light and dark: a black-and-white photograph, or one toned in a single colour.</summary>
/// <remarks>
/// Judged by what the section shows, whatever kind of file it is. A reagent shows by its colour; where there is none, what is dark may be anything.
/// Colour is ln(red ⁄ green) and ln(blue ⁄ green), which keep still when only the light changes.
/// </remarks>
internal static class OneTone
{
    // All limits are our own choice. In the drawn photographs colour varies by 1.1 or more where a reagent shows a front, by 0.14 or more within one
    // zone alone; in the same photographs by 0 as grey and by at most 0.22 toned brown.

    /// <summary>Colour that varies by less than this is one tone, if it is grey, or if light and dark are there to carry another.</summary>
    private const double NoVariation = 0.1;

    /// <summary>Colour as near to grey as this is grey.</summary>
    private const double Grey = 0.05;

    /// <summary>Light that varies by more than this shows light and dark.</summary>
    private const double LightAndDark = 0.3;

    /// <summary>Colour that varies by less than this, with two zones that differ by less than the second, is one tone made uneven by its file.</summary>
    private const double LittleVariation = 0.25;

    private const double LittleDifference = 0.2;

    /// <summary>Shares of the samples between which a variation is taken: stray ones do not count.</summary>
    private const double Low = 0.05;

    private const double High = 0.95;

    /// <summary>Whether the section shows one tone.</summary>
    /// <param name="samples">Its colours.</param>
    /// <param name="found">The zones found in them.</param>
    public static bool IsAll(WoodSamples samples, ZonesFound found)
    {
        var used = Enumerable
            .Range(0, samples.Count)
            .Where(n => samples.Weight[n] > 0)
            .Select(n => new LogColour(samples.L[n], samples.U[n], samples.V[n]))
            .ToList();
        if (used.Count == 0)
            return false;
        var tone = Tone.Of(used);
        var away = used.ConvertAll(tone.Away);
        var variation = Math.Max(Variation(away.Select(each => each.U)), Variation(away.Select(each => each.V)));
        if (variation < NoVariation)
            return tone.Colour < Grey || Variation(used.Select(each => (double)each.L)) > LightAndDark;
        var two = found switch
        {
            TwoZonesFound { Zones: var zones } => zones,
            OneZoneFound { Woods: var woods } => woods,
            _ => null,
        };
        return variation < LittleVariation
            && two is not null
            && Difference(tone.Away(Mean(two.Treated)), tone.Away(Mean(two.Untreated))) < LittleDifference;
    }

    private static LogColour Mean(IReadOnlyList<Gaussian3> zone) =>
        IndicatorFit.Mean(zone) is [var l, var u, var v]
            ? new((float)l, (float)u, (float)v)
            : throw new InvalidOperationException("A colour has three channels.");

    private static double Variation(IEnumerable<double> values)
    {
        double[] sorted = [.. values.Order()];
        return sorted[(int)(High * (sorted.Length - 1))] - sorted[(int)(Low * (sorted.Length - 1))];
    }

    private static double Difference((double U, double V) one, (double U, double V) other) =>
        double.Hypot(one.U - other.U, one.V - other.V);

    /// <summary>One colour in all strengths of light.</summary>
    /// <param name="RedPerGreen">Red for one part of green, in linear light.</param>
    /// <param name="BluePerGreen">Blue likewise.</param>
    private readonly record struct Tone(double RedPerGreen, double BluePerGreen)
    {
        /// <summary>How far it is from grey.</summary>
        public double Colour => Math.Max(Math.Abs(Math.Log(RedPerGreen)), Math.Abs(Math.Log(BluePerGreen)));

        /// <summary>The tone that all light together has.</summary>
        public static Tone Of(IReadOnlyList<LogColour> colours)
        {
            const double None = 1e-6;
            var (red, green, blue) = (None, None, None);
            foreach (var colour in colours)
            {
                var (r, g, b) = colour.Linear;
                (red, green, blue) = (red + Math.Max(0, r), green + Math.Max(0, g), blue + Math.Max(0, b));
            }
            return new(red / green, blue / green);
        }

        /// <summary>How far a colour is from the tone at its own strength of light.</summary>
        public (double U, double V) Away(LogColour colour)
        {
            var (r, g, b) = colour.Linear;
            var strength = Math.Max(0, r + g + b) / (1 + RedPerGreen + BluePerGreen);
            var expected = LogColour.OfLinear(RedPerGreen * strength, strength, BluePerGreen * strength);
            return (colour.U - expected.U, colour.V - expected.V);
        }
    }
}
