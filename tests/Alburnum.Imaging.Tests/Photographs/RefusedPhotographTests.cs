using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Reading;
using Alburnum.Imaging.Tests.Drawn;
using Alburnum.Timber;
using SkiaSharp;

namespace Alburnum.Imaging.Tests.Photographs;

public class RefusedPhotographTests
{
    private static readonly ReadingRequest Request = new()
    {
        Section = new RectangularSection(100, 75),
        Candidates = KnownIndicators.All,
    };

    [Fact]
    public void An_empty_file_is_refused() => Refused([], "an empty file");

    [Fact]
    public void Text_is_refused_whatever_its_name_ends_in() =>
        Refused("not a photograph at all, only words"u8.ToArray(), "not a readable picture");

    [Fact]
    public void A_picture_of_one_pixel_is_refused()
    {
        using var one = new SKBitmap(1, 1);
        using var data = one.Encode(SKEncodedImageFormat.Png, 90);
        Refused(data.ToArray(), "1 × 1 pixels");
    }

    [Fact]
    public void A_photograph_that_breaks_off_is_refused()
    {
        var whole = new PlainSection { PxPerMm = 4 }.Draw();
        Refused(whole[..(whole.Length / 3)], "damaged or unfinished");
    }

    [Fact]
    public void A_header_that_promises_a_huge_picture_is_refused_before_it_is_decoded()
    {
        // A PNG of 30 000 × 30 000 pixels: header and nothing else.
        using var small = new SKBitmap(64, 64);
        using var data = small.Encode(SKEncodedImageFormat.Png, 90);
        var bytes = data.ToArray();
        byte[] huge = [0, 0, 0x75, 0x30];
        huge.CopyTo(bytes, 16);
        huge.CopyTo(bytes, 20);
        // The header's own checksum must fit, or the file is refused for that instead.
        var crc = System.Buffers.Binary.BinaryPrimitives.ReverseEndianness(Crc32(bytes.AsSpan(12, 17)));
        BitConverter.TryWriteBytes(bytes.AsSpan(29), crc);
        var before = GC.GetTotalAllocatedBytes();
        Refused(bytes, "30000 × 30000 pixels");
        Assert.True(GC.GetTotalAllocatedBytes() - before < 50_000_000);
    }

    [Fact]
    public void Corners_that_cannot_be_a_section_are_refused()
    {
        var photo = new PlainSection { PxPerMm = 4 }.Draw();
        foreach (
            var corners in (PointPx[][])
                [
                    [new(10, 10), new(500, 10), new(500, 400)],
                    [new(10, 10), new(20, 20), new(30, 30), new(40, 40)],
                    [new(double.NaN, 10), new(500, 10), new(500, 400), new(10, 400)],
                    [new(-1e9, 10), new(500, 10), new(500, 400), new(10, 400)],
                ]
        )
        {
            var refused = Assert.Throws<InputRefusedException>(() =>
                SectionReader.Read("photo.jpg", photo, Request with { OutlinePx = corners }, CancellationToken.None)
            );
            Assert.Equal("corners", refused.Problems[0].Field);
        }
    }

    [Fact]
    public void Mutated_photographs_are_read_or_refused_and_nothing_else()
    {
        var whole = new PlainSection { PxPerMm = 3, MarginPx = 60 }.Draw();
        var random = new Random(71);
        var refused = 0;
        for (var n = 0; n < 60; n++)
        {
            var bytes = (byte[])whole.Clone();
            var changes = 1 + random.Next(20);
            // Headers are where the harm is: half of all changes fall into the first 700 bytes.
            for (var k = 0; k < changes; k++)
                bytes[random.Next(random.Next(2) == 0 ? 700 : bytes.Length)] = (byte)random.Next(256);
            try
            {
                var reading = SectionReader.Read("mutated.jpg", bytes, Request, CancellationToken.None);
                if (reading.Outcome is Read { Profile: var profile })
                    Assert.All(profile.Faces.SelectMany(f => f.DepthMm), d => Assert.InRange(d, 0, 100));
            }
            catch (InputRefusedException)
            {
                refused++;
            }
        }
        Assert.InRange(refused, 1, 59);
    }

    private static void Refused(byte[] bytes, string found)
    {
        var refused = Assert.Throws<InputRefusedException>(() =>
            SectionReader.Read("photo.jpg", bytes, Request, CancellationToken.None)
        );
        Assert.Equal("photo.jpg", refused.Problems[0].File);
        Assert.Contains(found, refused.Problems[0].Found, StringComparison.Ordinal);
    }

    private static uint Crc32(ReadOnlySpan<byte> bytes)
    {
        var crc = 0xFFFFFFFFu;
        foreach (var b in bytes)
        {
            crc ^= b;
            for (var k = 0; k < 8; k++)
                crc = (crc & 1) != 0 ? (crc >> 1) ^ 0xEDB88320u : crc >> 1;
        }
        return ~crc;
    }
}
