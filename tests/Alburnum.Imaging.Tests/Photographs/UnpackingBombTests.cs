using System.Buffers.Binary;
using System.Diagnostics;
using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Reading;
using Alburnum.Imaging.Tests.Drawn;

namespace Alburnum.Imaging.Tests.Photographs;

/// <summary>Small files that would unpack into something huge.</summary>
public class UnpackingBombTests
{
    [Fact]
    public void A_whole_png_of_four_hundred_megapixels_is_refused_without_unpacking_it()
    {
        // 20 000 × 20 000 white pixels, one bit each: some 50 kB that would become 1.6 GB.
        var bomb = Png(20_000, 20_000);
        Assert.True(bomb.Length < 100_000);
        var clock = Stopwatch.StartNew();
        var before = Process.GetCurrentProcess().PeakWorkingSet64;
        var refused = Assert.Throws<InputRefusedException>(() =>
            DrawnReading.Of(bomb, DrawnReading.Request(new PlainSection()))
        );

        Assert.Contains("20000 × 20000 pixels", refused.Problems[0].Found, StringComparison.Ordinal);
        Assert.True(clock.Elapsed < TimeSpan.FromSeconds(2), $"{clock.Elapsed}");
        Assert.True(Process.GetCurrentProcess().PeakWorkingSet64 - before < 200_000_000);
    }

    [Fact]
    public void A_colour_profile_that_unpacks_into_half_a_gigabyte_does_no_harm()
    {
        var packed = WrittenByHand.Packed(stream =>
        {
            var zeros = new byte[1 << 20];
            for (var k = 0; k < 512; k++)
                stream.Write(zeros);
        });
        var bomb = Png(200, 200, WrittenByHand.Chunk("iCCP", [.. "bomb\0\0"u8, .. packed]));
        var before = Process.GetCurrentProcess().PeakWorkingSet64;
        var clock = Stopwatch.StartNew();
        var corners = new PointPx[] { new(20, 20), new(180, 20), new(180, 180), new(20, 180) };
        try
        {
            var reading = DrawnReading.Of(bomb, DrawnReading.Request(new PlainSection()) with { OutlinePx = corners });
            Assert.IsType<NotDetermined>(reading.Outcome);
        }
        catch (InputRefusedException refused)
        {
            Assert.Equal("drawn.jpg", refused.Problems[0].File);
        }
        Assert.True(clock.Elapsed < TimeSpan.FromSeconds(5), $"{clock.Elapsed}");
        Assert.True(Process.GetCurrentProcess().PeakWorkingSet64 - before < 300_000_000);
    }

    [Fact]
    public void A_tiff_that_claims_a_huge_size_is_refused()
    {
        // Little-endian header and one directory: width, height, 8 bits, no compression, strips that are not there.
        (ushort Tag, ushort Type, uint Value)[] entries =
        [
            (256, 4, 60_000),
            (257, 4, 60_000),
            (258, 3, 8),
            (259, 3, 1),
            (262, 3, 1),
            (273, 4, 8),
            (277, 3, 1),
            (278, 4, 60_000),
            (279, 4, 3_600_000_000),
        ];
        var tiff = new byte[8 + 2 + (12 * entries.Length) + 4];
        "II*\0\b\0\0\0"u8.CopyTo(tiff);
        BinaryPrimitives.WriteUInt16LittleEndian(tiff.AsSpan(8), (ushort)entries.Length);
        for (var k = 0; k < entries.Length; k++)
        {
            var at = tiff.AsSpan(10 + (12 * k));
            BinaryPrimitives.WriteUInt16LittleEndian(at, entries[k].Tag);
            BinaryPrimitives.WriteUInt16LittleEndian(at[2..], entries[k].Type);
            BinaryPrimitives.WriteUInt32LittleEndian(at[4..], 1);
            BinaryPrimitives.WriteUInt32LittleEndian(at[8..], entries[k].Value);
        }
        var clock = Stopwatch.StartNew();
        Assert.Throws<InputRefusedException>(() => DrawnReading.Of(tiff, DrawnReading.Request(new PlainSection())));
        Assert.True(clock.Elapsed < TimeSpan.FromSeconds(3), $"{clock.Elapsed}");
    }

    // One-bit grey, all white.
    private static byte[] Png(int width, int height, params byte[][] extra) =>
        WrittenByHand.Png(
            width,
            height,
            bits: 1,
            colour: 0,
            stream =>
            {
                var row = new byte[1 + ((width + 7) / 8)];
                row.AsSpan(1).Fill(0xFF);
                for (var y = 0; y < height; y++)
                    stream.Write(row);
            },
            extra
        );
}
