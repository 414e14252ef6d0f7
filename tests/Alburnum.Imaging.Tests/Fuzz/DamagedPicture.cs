using System.Buffers.Binary;

namespace Alburnum.Imaging.Tests.Fuzz;

/// <summary>Ways in which a picture is made to do damage: its kind, its size and what it says of itself are not true.</summary>
internal static class DamagedPicture
{
    public static IReadOnlyList<Func<byte[], Random, byte[]>> Ways { get; } =
    [OtherHeader, OtherJpegSize, OtherPngSize, ExifInserted, SegmentLengthChanged];

    private static byte[] OtherHeader(byte[] file, Random random)
    {
        byte[][] headers =
        [
            [0xFF, 0xD8, 0xFF, 0xE0],
            [0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A],
            "RIFF\0\0\0\0WEBP"u8.ToArray(),
            "GIF89a"u8.ToArray(),
            "BM"u8.ToArray(),
            "II*\0"u8.ToArray(),
            "\0\0\0\u0018ftypheic"u8.ToArray(),
            "%PDF-1.7"u8.ToArray(),
            "<svg "u8.ToArray(),
        ];
        var header = headers[random.Next(headers.Length)];
        return [.. header, .. file[Math.Min(file.Length, header.Length)..]];
    }

    private static byte[] OtherJpegSize(byte[] file, Random random)
    {
        var copy = file.ToArray();
        if (FrameHeader(copy) is not { } frame)
            return copy;
        int[] sizes = [0, 1, 63, 64, 30000, 65535, random.Next(65536)];
        BinaryPrimitives.WriteUInt16BigEndian(copy.AsSpan(frame + 5), (ushort)sizes[random.Next(sizes.Length)]);
        BinaryPrimitives.WriteUInt16BigEndian(copy.AsSpan(frame + 7), (ushort)sizes[random.Next(sizes.Length)]);
        return copy;
    }

    private static byte[] OtherPngSize(byte[] file, Random random)
    {
        if (file.Length < 33 || file[1] != 'P')
            return file;
        var copy = file.ToArray();
        uint[] sizes = [0, 1, 64, 30000, 0x7FFFFFFF, 0xFFFFFFFF];
        BinaryPrimitives.WriteUInt32BigEndian(copy.AsSpan(16), sizes[random.Next(sizes.Length)]);
        BinaryPrimitives.WriteUInt32BigEndian(copy.AsSpan(20), sizes[random.Next(sizes.Length)]);
        // A right checksum, so that the size is believed.
        BinaryPrimitives.WriteUInt32BigEndian(copy.AsSpan(29), Crc32.Of(copy.AsSpan(12, 17)));
        return copy;
    }

    private static byte[] ExifInserted(byte[] file, Random random)
    {
        if (file.Length < 4 || file[0] != 0xFF || file[1] != 0xD8)
            return file;
        var entries = random.Next(3) == 0 ? random.Next(65536) : 1;
        var body = new byte[8 + 2 + 12 + 4];
        "MM\0*\0\0\0\b"u8.CopyTo(body);
        BinaryPrimitives.WriteUInt16BigEndian(body.AsSpan(8), (ushort)entries);
        BinaryPrimitives.WriteUInt16BigEndian(body.AsSpan(10), 0x0112);
        BinaryPrimitives.WriteUInt16BigEndian(body.AsSpan(12), (ushort)random.Next(14));
        BinaryPrimitives.WriteUInt32BigEndian(body.AsSpan(14), random.Next(3) == 0 ? uint.MaxValue : 1);
        BinaryPrimitives.WriteUInt16BigEndian(body.AsSpan(18), (ushort)random.Next(20));
        // The next directory: none, itself, or far outside.
        uint[] next = [0, 8, 0xFFFFFFF0];
        BinaryPrimitives.WriteUInt32BigEndian(body.AsSpan(22), next[random.Next(3)]);
        var length = 2 + 6 + body.Length + (random.Next(3) == 0 ? random.Next(60000) : 0);
        return [.. file[..2], 0xFF, 0xE1, (byte)(length >> 8), (byte)length, .. "Exif\0\0"u8, .. body, .. file[2..]];
    }

    private static byte[] SegmentLengthChanged(byte[] file, Random random)
    {
        var copy = file.ToArray();
        var markers = new List<int>();
        for (var k = 2; k + 4 < copy.Length && k < 2000; k++)
        {
            if (copy[k] == 0xFF && copy[k + 1] is >= 0xC0 and <= 0xEF)
                markers.Add(k);
        }
        if (markers.Count == 0)
            return copy;
        BinaryPrimitives.WriteUInt16BigEndian(
            copy.AsSpan(markers[random.Next(markers.Count)] + 2),
            (ushort)random.Next(65536)
        );
        return copy;
    }

    /// <summary>Where the JPEG says its size: the first SOF0 to SOF2 marker; null where there is none.</summary>
    private static int? FrameHeader(byte[] file)
    {
        for (var k = 2; k + 9 < file.Length; k++)
        {
            if (file[k] == 0xFF && file[k + 1] is >= 0xC0 and <= 0xC2)
                return k;
        }
        return null;
    }
}
