using System.Text.Json;
using Alburnum.Tests.Shared;
using SkiaSharp;

namespace Alburnum.Cli.Tests.Measuring;

/// <summary>What <c>alburnum measure --pieces</c> prints, writes and refuses.</summary>
public sealed class MeasureSeveralTests : IDisposable
{
    private const int PxPerMm = 4;

    private readonly TemporaryFolder _folder = new();
    private readonly string _photograph;

    public MeasureSeveralTests()
    {
        _photograph = _folder.At("bench.jpg");
        File.WriteAllBytes(_photograph, ThreeInARow());
    }

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task Each_piece_is_a_reading_of_its_own_in_reading_order()
    {
        var run = await AlburnumRun.Of("measure", _photograph, "--section", "75x100", "--pieces", "3", "--json");

        Assert.Equal(CommandLine.Done, run.Status);
        using var document = JsonDocument.Parse(run.Output);
        var readings = document.RootElement.EnumerateArray().ToList();
        Assert.Equal([1, 2, 3], readings.Select(each => each.GetProperty("piece_number").GetInt32()));
        Assert.All(readings, each => Assert.Equal(JsonValueKind.Null, each.GetProperty("piece_label").ValueKind));
        Assert.All(readings, each => Assert.Equal(_photograph, each.GetProperty("file").GetString()));
        // As drawn: 8, 12 and 16 mm.
        Assert.All(
            readings.Zip([8.0, 12, 16]),
            pair =>
                Assert.Equal(
                    pair.Second,
                    pair.First.GetProperty("depth").GetProperty("median_mm").GetDouble(),
                    tolerance: 0.5
                )
        );
    }

    [Fact]
    public async Task Pieces_go_by_their_labels_on_the_terminal_and_are_drawn_on_one_picture()
    {
        var run = await AlburnumRun.Of(
            "measure",
            _photograph,
            "--section",
            "75x100",
            "--labels",
            "A1, A2, B1",
            "--overlay",
            _folder.At("out")
        );

        Assert.Equal(CommandLine.Done, run.Status);
        Assert.All(
            ["bench.jpg A1", "bench.jpg A2", "bench.jpg B1", "3 pieces: "],
            name => Assert.Contains(name, run.Output, StringComparison.Ordinal)
        );
        Assert.Equal(
            ["bench.overlay.jpg", "contact-sheet.jpg", "readings.json"],
            Directory.EnumerateFiles(_folder.At("out")).Select(Path.GetFileName).Order(StringComparer.Ordinal)
        );
    }

    [Theory]
    [InlineData("--pieces", "1", "--pieces")]
    [InlineData("--labels", "A1,A1,A2", "\"A1\" more than once")]
    [InlineData("--labels", "A1,,A2", "--labels")]
    public async Task What_cannot_be_is_refused_in_one_message(string option, string given, string says)
    {
        var run = await AlburnumRun.Of("measure", _photograph, "--section", "75x100", option, given);

        Assert.Equal(CommandLine.Refused, run.Status);
        Assert.Contains(says, run.Errors, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", run.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Another_number_than_was_said_is_refused_and_said_with_both()
    {
        var run = await AlburnumRun.Of("measure", _photograph, "--section", "75x100", "--pieces", "4", "--json");

        Assert.Equal(CommandLine.Refused, run.Status);
        Assert.Contains("found 3 things as large as a piece, expected 4, ", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_is_said_of_one_section_alone_is_refused_beside_several()
    {
        var run = await AlburnumRun.Of(
            "measure",
            _photograph,
            "--section",
            "half round 100",
            "--pieces",
            "3",
            "--labels",
            "A,B",
            "--pith",
            "3,4",
            "--heartwood-radius",
            "20"
        );

        Assert.Equal(CommandLine.Refused, run.Status);
        Assert.All(
            ["half-round", "2 labels", "--pith", "--heartwood-radius"],
            says => Assert.Contains(says, run.Errors, StringComparison.Ordinal)
        );
    }

    // Sawn 75 × 100 mm, treated 8, 12 and 16 mm deep.
    private static byte[] ThreeInARow()
    {
        var noise = new Random(5);
        using var bitmap = new SKBitmap(460 * PxPerMm, 200 * PxPerMm, SKColorType.Rgba8888, SKAlphaType.Opaque);
        for (var y = 0; y < bitmap.Height; y++)
        for (var x = 0; x < bitmap.Width; x++)
        {
            var (r, g, b) = At((double)x / PxPerMm, (double)y / PxPerMm);
            byte Noisy(int value) => (byte)Math.Clamp(value + noise.Next(-5, 6), 0, 255);
            bitmap.SetPixel(x, y, new SKColor(Noisy(r), Noisy(g), Noisy(b)));
        }
        using var jpeg = bitmap.Encode(SKEncodedImageFormat.Jpeg, 95);
        return jpeg.ToArray();
    }

    private static (int R, int G, int B) At(double xMm, double yMm)
    {
        for (var piece = 0; piece < 3; piece++)
        {
            var (x, y) = (xMm - 40 - (140 * piece), yMm - 50);
            var inside = Math.Min(Math.Min(x, 75 - x), Math.Min(y, 100 - y));
            if (inside >= 0)
                return inside < 8 + (4 * piece) ? (52, 66, 128) : (214, 176, 120);
        }
        return (140, 142, 140);
    }
}
