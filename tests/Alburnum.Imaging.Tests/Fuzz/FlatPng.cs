using System.Buffers.Binary;
using System.IO.Compression;

namespace Alburnum.Imaging.Tests.Fuzz;

/// <summary>A whole and correct PNG file of one grey, of any size: next to nothing to store, much to unpack.</summary>
internal static class FlatPng
{
    public static byte[] Of(int width, int height)
    {
        using var file = new MemoryStream();
        file.Write([0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A]);
        var header = new byte[13];
        BinaryPrimitives.WriteInt32BigEndian(header, width);
        BinaryPrimitives.WriteInt32BigEndian(header.AsSpan(4), height);
        header[8] = 8;
        Chunk(file, "IHDR"u8, header);
        using var packed = new MemoryStream();
        using (var zlib = new ZLibStream(packed, CompressionLevel.Fastest, leaveOpen: true))
        {
            var row = new byte[width + 1];
            for (var y = 0; y < height; y++)
                zlib.Write(row);
        }
        Chunk(file, "IDAT"u8, packed.ToArray());
        Chunk(file, "IEND"u8, []);
        return file.ToArray();
    }

    private static void Chunk(MemoryStream file, ReadOnlySpan<byte> kind, ReadOnlySpan<byte> content)
    {
        var number = new byte[4];
        BinaryPrimitives.WriteInt32BigEndian(number, content.Length);
        file.Write(number);
        byte[] summed = [.. kind, .. content];
        file.Write(summed);
        BinaryPrimitives.WriteUInt32BigEndian(number, Crc32.Of(summed));
        file.Write(number);
    }
}
