namespace Alburnum.Imaging.Tests.Fuzz;

/// <summary>The checksum that PNG chunks end in (ISO 3309), bit by bit.</summary>
internal static class Crc32
{
    public static uint Of(ReadOnlySpan<byte> bytes)
    {
        var sum = uint.MaxValue;
        foreach (var value in bytes)
        {
            sum ^= value;
            for (var bit = 0; bit < 8; bit++)
                sum = (sum >> 1) ^ (0xEDB88320u & (0u - (sum & 1)));
        }
        return ~sum;
    }
}
