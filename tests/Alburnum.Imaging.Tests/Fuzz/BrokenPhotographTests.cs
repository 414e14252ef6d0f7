using Alburnum.DrawnSections;
using Alburnum.Imaging.Geometry;
using Alburnum.Imaging.Reading;
using Alburnum.Tests.Shared.Fuzz;
using Alburnum.Timber;
using SkiaSharp;

namespace Alburnum.Imaging.Tests.Fuzz;

/// <summary>Whatever arrives, the reader returns a sane reading or refuses it in words; nothing else ever leaves it.</summary>
public sealed class BrokenPhotographTests
{
    private static readonly Mutator Mutator = new([.. DamagedBytes.Ways, .. DamagedPicture.Ways]);

    private static readonly Lazy<(SectionTruth Truth, IReadOnlyList<(string Extension, byte[] Bytes)> Files)> Whole =
        new(Draw);

    private static readonly Lazy<byte[]> Heic = new(() =>
        File.ReadAllBytes(
            Alburnum.Tests.Shared.Repository.At("tests", "Alburnum.Imaging.Tests", "Photographs", "plain-section.heic")
        )
    );

    [Fact]
    public async Task A_mutated_photograph_is_read_sanely_or_refused_in_words()
    {
        var (truth, files) = Whole.Value;
        await FuzzRun.HoldAsync(
            "photographs",
            300,
            random =>
            {
                var kind = random.Next(files.Count + 1);
                var (ending, bytes) = kind < files.Count ? files[kind] : (".heic", Heic.Value);
                return (Mutator.Of(bytes, random), ending);
            },
            // Half of them with corners given.
            (bytes, ending) =>
                Task.FromResult(Fault($"photo{ending}", bytes, bytes.Length % 2 == 0 ? null : Corners(truth)))
        );
    }

    public static TheoryData<string> Kept =>
        [
            .. Directory
                .EnumerateFiles(Alburnum.Tests.Shared.Repository.At("tests", "Alburnum.Imaging.Tests", "Fuzz", "Kept"))
                .Select(file => Path.GetFileName(file)!),
        ];

    [Theory(Timeout = 60_000)]
    [MemberData(nameof(Kept))]
    public async Task What_once_led_to_a_fault_is_read_or_refused_in_time(string name)
    {
        var bytes = await File.ReadAllBytesAsync(
            Alburnum.Tests.Shared.Repository.At("tests", "Alburnum.Imaging.Tests", "Fuzz", "Kept", name),
            TestContext.Current.CancellationToken
        );

        Assert.Null(await Task.Run(() => Fault(name, bytes, null), TestContext.Current.CancellationToken));
        Assert.Null(
            await Task.Run(() => Fault(name, bytes, Corners(Whole.Value.Truth)), TestContext.Current.CancellationToken)
        );
    }

    [Theory]
    [InlineData(".png")]
    [InlineData(".webp")]
    [InlineData(".jpg")]
    public void A_wrong_extension_does_not_matter(string extension)
    {
        foreach (var (_, bytes) in Whole.Value.Files)
            Assert.IsType<Read>(Read("photo" + extension, bytes, Corners(Whole.Value.Truth)).Outcome);
    }

    [Theory]
    [InlineData(1, 1)]
    [InlineData(0, 0)]
    [InlineData(30000, 30000)]
    [InlineData(65535, 65535)]
    public void A_jpeg_that_declares_an_impossible_size_is_refused(int width, int height)
    {
        var jpeg = Whole.Value.Files[0].Bytes.ToArray();
        var frame = jpeg.AsSpan().IndexOf((ReadOnlySpan<byte>)[0xFF, 0xC0]);
        jpeg[frame + 5] = (byte)(height >> 8);
        jpeg[frame + 6] = (byte)height;
        jpeg[frame + 7] = (byte)(width >> 8);
        jpeg[frame + 8] = (byte)width;
        Refuses(jpeg);
    }

    [Theory]
    [InlineData("")]
    [InlineData("This is a letter, not a picture.")]
    [InlineData("\0\0\0\0\0\0\0\0")]
    [InlineData("<svg xmlns='http://www.w3.org/2000/svg'/>")]
    public void What_is_no_photograph_is_refused(string text) => Refuses(System.Text.Encoding.UTF8.GetBytes(text));

    [Theory]
    [InlineData(0.02)]
    [InlineData(0.3)]
    [InlineData(0.9)]
    public void A_photograph_cut_short_is_refused(double share)
    {
        foreach (var (_, bytes) in Whole.Value.Files)
            Refuses(bytes[..(int)(share * bytes.Length)]);
    }

    private static void Refuses(byte[] bytes)
    {
        var refusal = Assert.Throws<InputRefusedException>(() => Read("cut-end.jpg", bytes, null));
        var problem = Assert.Single(refusal.Problems);
        Assert.Equal("cut-end.jpg", problem.File);
        Assert.NotEmpty(problem.Found);
        Assert.NotEmpty(problem.Expected);
    }

    /// <summary>What is wrong with the reader's answer to these bytes; null where nothing is.</summary>
    private static string? Fault(string name, byte[] bytes, IReadOnlyList<PointPx>? corners)
    {
        try
        {
            var reading = Read(name, bytes, corners);
            if (reading.Outcome is not Read { Profile: var profile })
                return null;
            var depths = profile.Faces.SelectMany(face => face.DepthMm.Concat(face.StandardUncertaintyMm));
            if (depths.Any(depth => !(depth is >= 0 and <= 1000)))
                return "A depth or its uncertainty is negative, huge or no number.";
            return profile.TreatedShare.Value is >= 0 and <= 1 ? null : "The treated share is no share.";
        }
        catch (InputRefusedException refusal)
        {
            return refusal.Problems.Count > 0 && refusal.Message.Contains(name, StringComparison.Ordinal)
                ? null
                : "The refusal does not name the file.";
        }
#pragma warning disable CA1031 // Any other exception is exactly what is looked for.
        catch (Exception other)
        {
            return other.ToString();
        }
#pragma warning restore CA1031
    }

    private static SectionReading Read(string name, byte[] bytes, IReadOnlyList<PointPx>? corners) =>
        SectionReader.Read(
            name,
            bytes,
            new ReadingRequest
            {
                Section = new RectangularSection(Whole.Value.Truth.SectionMm[0], Whole.Value.Truth.SectionMm[1]),
                OutlinePx = corners,
                Candidates = KnownIndicators.All,
            },
            TestContext.Current.CancellationToken
        );

    private static List<PointPx> Corners(SectionTruth truth) => [.. truth.OutlinePx.Select(p => new PointPx(p.X, p.Y))];

    private static (SectionTruth, IReadOnlyList<(string, byte[])>) Draw()
    {
        var scene = Enumerable
            .Range(1, 100)
            .Select(seed => StratifiedScenes.Of(Stratum.Easy, seed, [], megapixels: 0.4))
            .First(candidate => candidate.Shape.Outline.Count == 4);
        var jpeg = scene.Photograph();
        using var bitmap = SKBitmap.Decode(jpeg);
        using var png = bitmap.Encode(SKEncodedImageFormat.Png, 90);
        using var webp = bitmap.Encode(SKEncodedImageFormat.Webp, 92);
        using var same = new ImageMagick.MagickImage(png.ToArray());
        same.Settings.Compression = ImageMagick.CompressionMethod.LZW;
        var tiff = same.ToByteArray(ImageMagick.MagickFormat.Tiff);
        return (scene.Truth(), [(".jpg", jpeg), (".png", png.ToArray()), (".webp", webp.ToArray()), (".tif", tiff)]);
    }
}
