using System.Buffers.Binary;
using System.IO.Compression;
using Alburnum.Imaging.Tests.Fuzz;
using SkiaSharp;

namespace Alburnum.Imaging.Tests.Photographs;

/// <summary>Picture files written byte by byte, for kinds that no encoder at hand writes.</summary>
internal static class WrittenByHand
{
    /// <summary>A PNG (ISO/IEC 15948) from its header fields and the rows that are streamed through the packer.</summary>
    public static byte[] Png(int width, int height, byte bits, byte colour, Action<Stream> rows, params byte[][] extra)
    {
        var header = new byte[13];
        BinaryPrimitives.WriteInt32BigEndian(header, width);
        BinaryPrimitives.WriteInt32BigEndian(header.AsSpan(4), height);
        (header[8], header[9]) = (bits, colour);
        return
        [
            0x89,
            .. "PNG\r\n\x1a\n"u8,
            .. Chunk("IHDR", header),
            .. extra.SelectMany(chunk => chunk),
            .. Chunk("IDAT", Packed(rows)),
            .. Chunk("IEND", []),
        ];
    }

    /// <summary>A PNG of 16 bits a channel.</summary>
    public static byte[] DeepPng(SKBitmap drawn) =>
        Png(
            drawn.Width,
            drawn.Height,
            16,
            2,
            stream =>
            {
                for (var y = 0; y < drawn.Height; y++)
                {
                    stream.WriteByte(0);
                    stream.Write(DeepRow(drawn, y));
                }
            }
        );

    /// <summary>An uncompressed TIFF 6.0 of 16 bits a channel, high byte first.</summary>
    public static byte[] DeepTiff(SKBitmap drawn)
    {
        var size = 6 * drawn.Width * drawn.Height;
        (ushort Tag, ushort Type, uint Count, uint Value)[] entries =
        [
            (256, 4, 1, (uint)drawn.Width),
            (257, 4, 1, (uint)drawn.Height),
            // Three shorts do not fit: they lie behind the pixels.
            (258, 3, 3, (uint)(8 + size)),
            (259, 3, 1, 1u << 16),
            (262, 3, 1, 2u << 16),
            (273, 4, 1, 8),
            (277, 3, 1, 3u << 16),
            (278, 4, 1, (uint)drawn.Height),
            (279, 4, 1, (uint)size),
        ];
        using var file = new MemoryStream();
        file.Write("MM\0*"u8);
        Write(file, (uint)(8 + size + 6));
        for (var y = 0; y < drawn.Height; y++)
            file.Write(DeepRow(drawn, y));
        file.Write([0, 16, 0, 16, 0, 16, 0, (byte)entries.Length]);
        foreach (var (tag, type, count, value) in entries)
        {
            Write(file, ((uint)tag << 16) | type);
            Write(file, count);
            Write(file, value);
        }
        Write(file, 0);
        return file.ToArray();
    }

    /// <summary>A chunk of a PNG with its checksum.</summary>
    public static byte[] Chunk(string name, byte[] body)
    {
        byte[] named = [.. System.Text.Encoding.ASCII.GetBytes(name), .. body];
        var chunk = new byte[8 + named.Length];
        BinaryPrimitives.WriteInt32BigEndian(chunk, body.Length);
        named.CopyTo(chunk, 4);
        BinaryPrimitives.WriteUInt32BigEndian(chunk.AsSpan(4 + named.Length), Crc32.Of(named));
        return chunk;
    }

    /// <summary>Bytes packed as they are written.</summary>
    public static byte[] Packed(Action<Stream> write)
    {
        using var packed = new MemoryStream();
        using (var packer = new ZLibStream(packed, CompressionLevel.Optimal))
            write(packer);
        return packed.ToArray();
    }

    // Each 8-bit value twice is the same value in 16 bits.
    private static byte[] DeepRow(SKBitmap drawn, int y)
    {
        var row = new byte[6 * drawn.Width];
        for (var x = 0; x < drawn.Width; x++)
        {
            var pixel = drawn.GetPixel(x, y);
            var at = row.AsSpan(6 * x);
            (at[0], at[1]) = (pixel.Red, pixel.Red);
            (at[2], at[3]) = (pixel.Green, pixel.Green);
            (at[4], at[5]) = (pixel.Blue, pixel.Blue);
        }
        return row;
    }

    private static void Write(MemoryStream file, uint value)
    {
        var bytes = new byte[4];
        BinaryPrimitives.WriteUInt32BigEndian(bytes, value);
        file.Write(bytes);
    }
}
