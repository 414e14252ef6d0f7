namespace Alburnum.Tests.Shared.Fuzz;

/// <summary>Makes damaged files from whole ones.</summary>
/// <param name="ways">Each damages a file in one way.</param>
internal sealed class Mutator(params IReadOnlyList<Func<byte[], Random, byte[]>> ways)
{
    /// <summary>One to three ways of damage, one after the other.</summary>
    public byte[] Of(byte[] whole, Random random)
    {
        var mutated = whole;
        for (var k = random.Next(1, 4); k > 0; k--)
            mutated = ways[random.Next(ways.Count)](mutated, random);
        return mutated;
    }
}
