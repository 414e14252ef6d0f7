using MathNet.Numerics.Distributions;

namespace Alburnum.Measures;

/// <summary>Random numbers from a recorded seed: the same on every machine and in every later version.</summary>
/// <param name="seed">The seed; recorded beside whatever was drawn.</param>
/// <remarks>
/// SplitMix64, a small generator in the public domain (Steele, Lea and Flood, "Fast splittable pseudorandom number generators", 2014), written
/// here so that no library's next version changes what a seed draws. The base class only makes it acceptable to MathNet's distributions.
/// </remarks>
public sealed class SeededRandom(ulong seed) : Random(0)
{
    private ulong _state = seed;

    /// <summary>From a seed as a person gives it.</summary>
    public SeededRandom(int seed)
        : this(unchecked((ulong)seed)) { }

    /// <summary>An even draw from 0 to below a bound; draws again rather than favour low numbers.</summary>
    /// <param name="bound">1 or more.</param>
    public ulong Below(ulong bound)
    {
        var most = ulong.MaxValue - ulong.MaxValue % bound;
        ulong drawn;
        do
        {
            drawn = NextBits();
        } while (drawn >= most);
        return drawn % bound;
    }

    /// <summary>A standard normal draw, by the inverse of the distribution: one number of the stream each.</summary>
    public double NextNormal() => Normal.InvCDF(0, 1, ((NextBits() >> 11) + 0.5) / (1UL << 53));

    /// <summary>An even draw from 0 to below 1.</summary>
    protected override double Sample() => (NextBits() >> 11) * (1.0 / (1UL << 53));

    private ulong NextBits()
    {
        unchecked
        {
            _state += 0x9E3779B97F4A7C15;
            var z = _state;
            z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
            z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
            return z ^ (z >> 31);
        }
    }
}
