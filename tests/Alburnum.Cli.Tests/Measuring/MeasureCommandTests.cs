using System.Diagnostics;
using System.Text.Json;
using Alburnum.Tests.Shared;

namespace Alburnum.Cli.Tests.Measuring;

/// <summary>What <c>alburnum measure</c> prints and writes, and what it does with files that are no photographs.</summary>
public sealed class MeasureCommandTests : IDisposable
{
    private static readonly string Post = Repository.At("examples", "orchard-posts", "P01.jpg");
    private static readonly string Purlin = Repository.At("examples", "barn-purlins", "P01.jpg");
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task The_json_of_a_sawn_section_is_as_described()
    {
        var reading = await One(Post, "--section", "100x100", "--indicator", "copper-blue");

        Assert.Equal(Post, reading.GetProperty("file").GetString());
        Assert.Matches("^[0-9a-f]{64}$", reading.GetProperty("sha256").GetString());
        Assert.Equal("rectangle", reading.GetProperty("shape").GetString());
        Assert.Equal([100.0, 100.0], Numbers(reading.GetProperty("section_mm")));
        Assert.Equal("copper-blue", reading.GetProperty("indicator").GetString());
        var corners = reading.GetProperty("corners_px").EnumerateArray().Select(Numbers).ToList();
        Assert.Equal(4, corners.Count);
        Assert.All(corners, point => Assert.Equal(2, point.Count));
        Assert.True(TwiceArea(corners) > 0, "The corners do not run clockwise.");
        Assert.Equal(JsonValueKind.Null, reading.GetProperty("rim_px").ValueKind);
        Assert.Equal([1, 2, 3, 4], Faces(reading).Select(face => face.GetProperty("number").GetInt32()));
        CheckFaces(reading);
        CheckDepth(reading);
        Assert.InRange(reading.GetProperty("treated_share").GetDouble(), 0.2, 0.6);
        Assert.Equal(JsonValueKind.Null, reading.GetProperty("sapwood_treated_share").ValueKind);
        Assert.Equal("good", reading.GetProperty("quality").GetString());
        Assert.Equal(JsonValueKind.Array, reading.GetProperty("notes").ValueKind);
        Assert.Equal(JsonValueKind.Null, reading.GetProperty("required").ValueKind);
        Assert.Equal(JsonValueKind.Null, reading.GetProperty("between_incisions").ValueKind);
    }

    [Fact]
    public async Task The_json_of_a_round_section_has_one_face_and_a_rim()
    {
        var reading = await One(Purlin, "--section", "round 120");

        Assert.Equal("round", reading.GetProperty("shape").GetString());
        Assert.Equal([120.0], Numbers(reading.GetProperty("section_mm")));
        Assert.Equal(JsonValueKind.Null, reading.GetProperty("corners_px").ValueKind);
        var rim = reading.GetProperty("rim_px").EnumerateArray().Select(Numbers).ToList();
        Assert.True(rim.Count >= 5 && TwiceArea(rim) > 0);
        var face = Assert.Single(Faces(reading));
        Assert.Equal(
            Math.PI * 120,
            face.GetProperty("step_mm").GetDouble() * face.GetProperty("positions_mm").GetArrayLength(),
            0.01
        );
        CheckFaces(reading);
        CheckDepth(reading);
    }

    [Fact]
    public async Task A_case_whose_section_is_not_found_says_how_to_point_it_out()
    {
        foreach (var file in Directory.EnumerateFiles(Repository.At("examples", "barn-purlins")))
            File.Copy(file, _folder.At(Path.GetFileName(file)));
        using var blank = new SkiaSharp.SKBitmap(800, 600);
        blank.Erase(SkiaSharp.SKColors.Tan);
        using (var jpeg = blank.Encode(SkiaSharp.SKEncodedImageFormat.Jpeg, 90))
            await File.WriteAllBytesAsync(_folder.At("P03.jpg"), jpeg.ToArray(), TestContext.Current.CancellationToken);
        var run = await AlburnumRun.Of(
            "case",
            _folder.Path,
            "--store",
            _folder.At("cases.db"),
            "--out",
            _folder.At("out")
        );

        Assert.Equal(CommandLine.Done, run.Status);
        var report = await File.ReadAllTextAsync(_folder.At("out/report.json"), TestContext.Current.CancellationToken);
        var piece = JsonDocument
            .Parse(report)
            .RootElement.GetProperty("pieces")
            .EnumerateArray()
            .Single(each => each.GetProperty("name").GetString() == "P03");
        Assert.Equal("undecided", piece.GetProperty("verdict").GetProperty("verdict").GetString());
        var notes = piece
            .GetProperty("reading")
            .GetProperty("notes")
            .EnumerateArray()
            .Select(n => n.GetString()!)
            .ToList();
        Assert.Contains(notes, note => note.Contains("point out", StringComparison.OrdinalIgnoreCase));
        Assert.Contains(
            notes,
            note =>
                note.Contains("under piece P03 in case.yaml", StringComparison.Ordinal)
                && note.Contains("(800 × 600)", StringComparison.Ordinal)
        );
    }

    [Theory]
    [InlineData("round 120", false, "round", 120, 0)]
    [InlineData("⌀ 120 mm", false, "round", 120, 0)]
    [InlineData("4 x 4 in", false, "rectangle", 101.6, 101.6)]
    [InlineData("100 × 75 mm", false, "rectangle", 100, 75)]
    [InlineData("5x80", true, "core", 5, 80)]
    [InlineData("half round 120", false, "half-round", 120, 0)]
    [InlineData("quartered 120", false, "quartered", 120, 0)]
    public async Task A_size_is_written_as_in_a_case(string size, bool isCore, string name, double a, double b)
    {
        // A file that cannot be opened still says what was asked.
        string[] options = isCore ? ["--core"] : [];
        var run = await AlburnumRun.Of(["measure", _folder.At("none.jpg"), "--json", "--section", size, .. options]);
        var reading = JsonDocument.Parse(run.Output).RootElement[0];

        Assert.Equal(name, reading.GetProperty("shape").GetString());
        Assert.Equal(b == 0 ? [a] : [a, b], Numbers(reading.GetProperty("section_mm")));
    }

    [Theory]
    [InlineData("120")]
    [InlineData("round 120")]
    [InlineData("half round 120")]
    public async Task A_core_is_refused_without_its_diameter_and_length(string size)
    {
        var run = await AlburnumRun.Of("measure", Post, "--section", size, "--core");

        Assert.Equal((CommandLine.Refused, ""), (run.Status, run.Output));
        Assert.Equal(
            $"command line, field --section: found {size}, expected diameter and length of the core, for instance 5x80.",
            run.Errors.Trim()
        );
    }

    [Fact]
    public async Task Everything_that_can_be_asked_beyond_depth_is_in_the_json()
    {
        var reading = await One(
            Purlin,
            "--section",
            "round 120",
            "--depth",
            "6",
            "--incised",
            "--pith",
            "1000,750",
            "--heartwood-radius",
            "30",
            "--step",
            "0.5"
        );

        var required = reading.GetProperty("required");
        Assert.Equal(6, required.GetProperty("depth_mm").GetDouble());
        Assert.InRange(required.GetProperty("reached_share").GetDouble(), 0, 1);
        Assert.InRange(required.GetProperty("reached_share_u").GetDouble(), 0, 0.5);
        Assert.Equal(1, required.GetProperty("faces").GetArrayLength());
        Assert.InRange(reading.GetProperty("sapwood_treated_share").GetDouble(), 0.01, 1);
        Assert.InRange(reading.GetProperty("sapwood_treated_share_u").GetDouble(), 0.001, 0.5);
        var face = Faces(reading).Single();
        Assert.InRange(face.GetProperty("step_mm").GetDouble(), 0.4, 0.5);
        var count = face.GetProperty("positions_mm").GetArrayLength();
        foreach (var list in new[] { "nearest_untreated_mm", "envelope_mm", "sapwood_mm" })
            Assert.Equal(count, face.GetProperty(list).GetArrayLength());
        Assert.Equal(JsonValueKind.Array, face.GetProperty("fingers").ValueKind);
        Assert.True(
            reading.GetProperty("between_incisions").GetProperty("mean_mm").GetDouble()
                <= reading.GetProperty("depth").GetProperty("mean_mm").GetDouble() + 1e-9
        );
    }

    [Fact]
    public async Task A_broken_photograph_does_not_stop_the_rest()
    {
        File.Copy(Post, _folder.At("a.jpg"));
        _folder.Write("b.jpg", "words, not a picture");
        await File.WriteAllBytesAsync(
            _folder.At("c.jpg"),
            (await File.ReadAllBytesAsync(Post, TestContext.Current.CancellationToken))[..90_000],
            TestContext.Current.CancellationToken
        );
        _folder.Write("notes.txt", "not looked at");
        Directory.CreateDirectory(_folder.At("d.jpg"));
        var run = await AlburnumRun.Of(
            "measure",
            _folder.Path,
            "--section",
            "100x100",
            "--overlay",
            _folder.At("out"),
            "--json"
        );

        Assert.Equal(CommandLine.Done, run.Status);
        var readings = JsonDocument.Parse(run.Output).RootElement.EnumerateArray().ToList();
        Assert.Equal(
            ["a.jpg", "b.jpg", "c.jpg"],
            readings.Select(r => Path.GetFileName(r.GetProperty("file").GetString()))
        );
        Assert.Equal(JsonValueKind.Object, readings[0].GetProperty("depth").ValueKind);
        foreach (var broken in readings.Skip(1))
        {
            Assert.Equal(JsonValueKind.Null, broken.GetProperty("depth").ValueKind);
            Assert.Equal("unusable", broken.GetProperty("quality").GetString());
            Assert.NotEqual(0, broken.GetProperty("notes").GetArrayLength());
        }
        Assert.Equal(
            ["a.overlay.jpg", "contact-sheet.jpg", "readings.json"],
            Directory.EnumerateFiles(_folder.At("out")).Select(f => Path.GetFileName(f)).Order(StringComparer.Ordinal)
        );
        Assert.Equal(
            run.Output.Trim(),
            (await File.ReadAllTextAsync(_folder.At("out/readings.json"), TestContext.Current.CancellationToken)).Trim()
        );
    }

    [Fact]
    public async Task Nothing_but_broken_photographs_ends_with_status_2()
    {
        var run = await AlburnumRun.Of("measure", _folder.Write("b.jpg", "words"), "--section", "100x100");

        Assert.Equal(CommandLine.Refused, run.Status);
    }

    [Fact]
    public async Task Pipes_devices_folders_and_links_to_nothing_are_refused_at_once()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Pipes and devices have no path there.");
        using (var made = Process.Start("mkfifo", _folder.At("pipe.jpg")))
            await made.WaitForExitAsync(TestContext.Current.CancellationToken);
        File.CreateSymbolicLink(_folder.At("nothing.jpg"), _folder.At("gone.jpg"));
        File.CreateSymbolicLink(_folder.At("loop.jpg"), _folder.At("loop.jpg"));
        Directory.CreateDirectory(_folder.At("inner"));
        File.CreateSymbolicLink(_folder.At("folder.jpg"), _folder.At("inner"));
        var clock = Stopwatch.StartNew();
        foreach (var file in new[] { "pipe.jpg", "nothing.jpg", "loop.jpg", "missing.jpg", "/dev/zero", "/dev/null" })
        {
            var path = Path.IsPathRooted(file) ? file : _folder.At(file);
            var run = await AlburnumRun.Of("measure", path, "--section", "100x100", "--json");

            Assert.Equal(CommandLine.Refused, run.Status);
            Assert.Equal("unusable", JsonDocument.Parse(run.Output).RootElement[0].GetProperty("quality").GetString());
        }
        // A link to a folder is a folder: it holds no photograph.
        Assert.Equal(
            CommandLine.Refused,
            (await AlburnumRun.Of("measure", _folder.At("folder.jpg"), "--section", "100x100")).Status
        );
        Assert.True(clock.Elapsed < TimeSpan.FromSeconds(20), $"{clock.Elapsed}");
    }

    [Fact]
    public async Task A_link_to_a_photograph_is_followed()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Links need a privilege there.");
        File.CreateSymbolicLink(_folder.At("link.jpg"), Post);
        var run = await AlburnumRun.Of("measure", _folder.At("link.jpg"), "--section", "100x100", "--json");

        Assert.Equal(
            JsonValueKind.Object,
            JsonDocument.Parse(run.Output).RootElement[0].GetProperty("depth").ValueKind
        );
    }

    [Fact]
    public async Task A_place_beside_the_photograph_is_refused_with_its_option_and_the_size_of_the_photograph()
    {
        var run = await AlburnumRun.Of("measure", Post, "--section", "100x100", "--treated", "99999,5", "--json");

        Assert.Equal(2, run.Status);
        var reading = JsonDocument.Parse(run.Output).RootElement[0];
        Assert.Equal(JsonValueKind.Null, reading.GetProperty("depth").ValueKind);
        Assert.Contains("99999,5", reading.GetProperty("notes").GetRawText(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--section", "100x", "each size 1 to 2000 mm")]
    [InlineData("--section", "120", "each size 1 to 2000 mm")]
    [InlineData("--corners", "1,2 3", "points as x,y")]
    [InlineData("--corners", "1,1 9,1 9,9", "the 4 corners, clockwise")]
    [InlineData("--corners", "1,1 9,1 9,9 1,9 5,5", "the 4 corners, clockwise")]
    [InlineData("--heartwood-reagent", "beetroot", "pine, white-oak")]
    [InlineData("--treated", "1;2", "points as x,y")]
    [InlineData("--leave-out", "left", "points as x,y")]
    [InlineData("--scale", "1,1 1,1 50", "two points and a length")]
    [InlineData("--scale", "1,1 90,1", "two points and a length")]
    [InlineData("--heartwood-ring", "1,1 2,2", "3 points or more")]
    [InlineData("--pith", "1,1", "--pith and --heartwood-radius together")]
    [InlineData("--depth", "0", "0.1 to 1000 mm")]
    [InlineData("--step", "5", "0.25 to 1 mm")]
    public async Task An_option_that_cannot_be_read_is_refused(string option, string value, string expected)
    {
        string[] size = option == "--section" ? [] : ["--section", "100x100"];
        var run = await AlburnumRun.Of(["measure", Post, option, value, .. size]);

        Assert.Equal(CommandLine.Refused, run.Status);
        Assert.Contains($"field {option}", run.Errors, StringComparison.Ordinal);
        Assert.Contains(expected, run.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_indicator_that_is_not_known_is_refused_with_those_that_are()
    {
        var run = await AlburnumRun.Of("measure", Post, "--section", "100x100", "--indicator", "beetroot");

        Assert.Equal(CommandLine.Refused, run.Status);
        Assert.All(
            AlburnumRun.Facts.Indicators,
            indicator => Assert.Contains(indicator.Key, run.Errors, StringComparison.Ordinal)
        );
    }

    [Fact]
    public async Task A_stopped_batch_writes_no_result()
    {
        using var stop = new CancellationTokenSource();
        await stop.CancelAsync();
        using var console = new Spectre.Console.Testing.TestConsole();
        using var errors = new StringWriter();
        var status = await CommandLine.RunAsync(
            ["measure", Post, "--section", "100x100", "--overlay", _folder.At("out")],
            AlburnumRun.Facts,
            console,
            errors,
            stop.Token
        );

        Assert.Equal(CommandLine.Stopped, status);
        Assert.False(File.Exists(_folder.At("out/readings.json")));
    }

    private static async Task<JsonElement> One(string photograph, params string[] options)
    {
        var run = await AlburnumRun.Of(["measure", photograph, "--json", .. options]);
        Assert.Equal(CommandLine.Done, run.Status);
        return Assert.Single(JsonDocument.Parse(run.Output).RootElement.EnumerateArray());
    }

    private static void CheckFaces(JsonElement reading)
    {
        foreach (var face in Faces(reading))
        {
            Assert.InRange(face.GetProperty("step_mm").GetDouble(), 0.9, 1);
            var positions = Numbers(face.GetProperty("positions_mm"));
            Assert.Equal(positions.Order(), positions);
            foreach (var list in new[] { "depth_mm", "u_mm" })
                Assert.All(Numbers(face.GetProperty(list)), mm => Assert.InRange(mm, 0, 100));
            foreach (var list in new[] { "depth_mm", "u_mm", "excluded", "sapwood_mm", "nearest_untreated_mm" })
                Assert.Equal(positions.Count, face.GetProperty(list).GetArrayLength());
        }
    }

    private static void CheckDepth(JsonElement reading)
    {
        var depth = reading.GetProperty("depth");
        foreach (var name in new[] { "min", "p5", "median", "mean", "max" })
        {
            Assert.InRange(depth.GetProperty($"{name}_mm").GetDouble(), 0, 100);
            Assert.InRange(depth.GetProperty($"{name}_u_mm").GetDouble(), 0.01, 5);
        }
    }

    private static IEnumerable<JsonElement> Faces(JsonElement reading) => reading.GetProperty("faces").EnumerateArray();

    private static List<double> Numbers(JsonElement list) => [.. list.EnumerateArray().Select(n => n.GetDouble())];

    // Positive for clockwise, y running down.
    private static double TwiceArea(List<List<double>> points) =>
        points
            .Select((p, i) => (p[0] * points[(i + 1) % points.Count][1]) - (points[(i + 1) % points.Count][0] * p[1]))
            .Sum();
}
