using Alburnum.Measures;

namespace Alburnum.Acceptance;

/// <summary>Which pieces of a lot to cut: drawn without putting back, and drawn the same again from the same seed.</summary>
/// <remarks>
/// A recorded seed gives the same pieces on every machine and in every later version (<see cref="SeededRandom"/>). Pieces are counted
/// through the lot as it lies.
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
        var random = new SeededRandom(seed);
        return [.. Draw(lotSize, sampleSize, random).Order()];
    }

    /// <summary>Draws the same pieces in a random order, for plans that may stop before all are cut.</summary>
    /// <inheritdoc cref="Draw(int, int, ulong)"/>
    /// <returns>Numbers from 1 to the lot, in the order in which to cut them.</returns>
    public static IReadOnlyList<int> DrawInOrder(int lotSize, int sampleSize, ulong seed)
    {
        var random = new SeededRandom(seed);
        int[] drawn = [.. Draw(lotSize, sampleSize, random).Order()];
        for (var i = drawn.Length - 1; i > 0; i--)
        {
            var other = (int)random.Below((ulong)i + 1);
            (drawn[i], drawn[other]) = (drawn[other], drawn[i]);
        }
        return drawn;
    }

    private static HashSet<int> Draw(int lotSize, int sampleSize, SeededRandom random)
    {
        Require.InRange(lotSize, 1, int.MaxValue, "pieces");
        Require.InRange(sampleSize, 1, lotSize, "pieces");
        HashSet<int> drawn = [];
        // Floyd's way: every subset of the size is equally likely, and no list of the whole lot is made.
        for (var top = lotSize - sampleSize + 1; top <= lotSize; top++)
        {
            var number = random.Below((ulong)top) + 1;
            if (!drawn.Add((int)number))
                drawn.Add(top);
        }
        return drawn;
    }
}
