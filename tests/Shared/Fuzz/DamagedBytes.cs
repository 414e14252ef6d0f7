namespace Alburnum.Tests.Shared.Fuzz;

/// <summary>Ways in which any file comes damaged.</summary>
internal static class DamagedBytes
{
    /// <summary>Where most kinds of file keep what the rest means, bytes.</summary>
    private const int Head = 700;

    public static IReadOnlyList<Func<byte[], Random, byte[]>> Ways { get; } =
    [CutOff, BitsFlipped, BytesReplaced, RunBlanked, StretchRemoved, StretchRepeated];

    private static byte[] CutOff(byte[] file, Random random) => file[..random.Next(file.Length + 1)];

    private static byte[] BitsFlipped(byte[] file, Random random)
    {
        var copy = file.ToArray();
        for (var k = random.Next(1, 12); k > 0 && copy.Length > 0; k--)
            copy[random.Next(copy.Length)] ^= (byte)(1 << random.Next(8));
        return copy;
    }

    private static byte[] BytesReplaced(byte[] file, Random random)
    {
        var copy = file.ToArray();
        // Half of them near the start, where the meaning is.
        for (var k = random.Next(1, 40); k > 0 && copy.Length > 0; k--)
            copy[random.Next(random.Next(2) == 0 ? Math.Min(copy.Length, Head) : copy.Length)] = (byte)random.Next(256);
        return copy;
    }

    private static byte[] RunBlanked(byte[] file, Random random)
    {
        var copy = file.ToArray();
        var (from, length) = Stretch(copy, random);
        copy.AsSpan(from, length).Fill(random.Next(2) == 0 ? (byte)0 : (byte)255);
        return copy;
    }

    private static byte[] StretchRemoved(byte[] file, Random random)
    {
        var (from, length) = Stretch(file, random);
        return [.. file[..from], .. file[(from + length)..]];
    }

    private static byte[] StretchRepeated(byte[] file, Random random)
    {
        var (from, length) = Stretch(file, random);
        return [.. file[..(from + length)], .. file[from..]];
    }

    private static (int From, int Length) Stretch(byte[] file, Random random)
    {
        var from = random.Next(file.Length + 1);
        return (from, random.Next(Math.Min(file.Length - from, 4000) + 1));
    }
}
