namespace Alburnum.Acceptance;

/// <summary>Which pieces of a lot to cut: drawn without putting back, and drawn the same again from the same seed.</summary>
/// <remarks>
/// A small generator of our own (SplitMix64, public domain, Steele, Lea and Flood 2014) so that a recorded seed gives the same pieces
/// on every machine and in every later version. Pieces are counted through the lot as it lies.
/// </remarks>
public static class RandomPositions
{
    /// <summary>Draws pieces.</summary>
    /// <param name="lotSize">Pieces in the lot, 1 or more.</param>
    /// <param name="sampleSize">Pieces to draw, 1 to the lot.</param>
    /// <param name="seed">Seed; recorded beside the result.</param>
    /// <returns>Numbers from 1 to the lot, rising, each once.</returns>
    public static IReadOnlyList<int> Draw(int lotSize, int sampleSize, ulong seed)
    {
        var state = seed;
        return [.. Draw(lotSize, sampleSize, ref state).Order()];
    }

    /// <summary>Draws the same pieces in a random order, for plans that may stop before all are cut.</summary>
    /// <inheritdoc cref="Draw(int, int, ulong)"/>
    /// <returns>Numbers from 1 to the lot, in the order in which to cut them.</returns>
    public static IReadOnlyList<int> DrawInOrder(int lotSize, int sampleSize, ulong seed)
    {
        var state = seed;
        int[] drawn = [.. Draw(lotSize, sampleSize, ref state).Order()];
        for (var i = drawn.Length - 1; i > 0; i--)
        {
            var other = (int)Below((ulong)i + 1, ref state);
            (drawn[i], drawn[other]) = (drawn[other], drawn[i]);
        }
        return drawn;
    }

    private static HashSet<int> Draw(int lotSize, int sampleSize, ref ulong state)
    {
        Require.InRange(lotSize, 1, int.MaxValue, "pieces");
        Require.InRange(sampleSize, 1, lotSize, "pieces");
        HashSet<int> drawn = [];
        // Floyd's way: every subset of the size is equally likely, and no list of the whole lot is made.
        for (var top = lotSize - sampleSize + 1; top <= lotSize; top++)
        {
            var number = Below((ulong)top, ref state) + 1;
            if (!drawn.Add((int)number))
                drawn.Add(top);
        }
        return drawn;
    }

    /// <summary>An even draw from 0 to below a bound; draws again rather than favour low numbers.</summary>
    private static ulong Below(ulong bound, ref ulong state)
    {
        var most = ulong.MaxValue - ulong.MaxValue % bound;
        ulong drawn;
        do
        {
            drawn = Next(ref state);
        } while (drawn >= most);
        return drawn % bound;
    }

    private static ulong Next(ref ulong state)
    {
        unchecked
        {
            state += 0x9E3779B97F4A7C15;
            var z = state;
            z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
            z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
            return z ^ (z >> 31);
        }
    }
}
