using System.Buffers.Binary;
using System.IO.Hashing;
using Alburnum.Tests.Shared;

namespace Alburnum.Cli.Tests.Cases;

/// <summary>A case folder with one thing wrong: one clear message, exit status 2, no report, the store as it was.</summary>
public sealed class BadCaseTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public BadCaseTests()
    {
        foreach (var file in Directory.EnumerateFiles(Repository.At("examples", "barn-purlins")))
        {
            if (!Path.GetFileName(file).StartsWith("report", StringComparison.Ordinal))
                File.Copy(file, CaseFile(Path.GetFileName(file)));
        }
    }

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task A_missing_photograph_is_refused()
    {
        File.Delete(CaseFile("P03.jpg"));

        await Refused("case.yaml", "field photograph", "P03.jpg, which is not there", "expected a photograph");
    }

    [Fact]
    public async Task A_photograph_that_is_not_an_image_is_refused()
    {
        await File.WriteAllTextAsync(CaseFile("P03.jpg"), "not an image", TestContext.Current.CancellationToken);

        await Refused("P03.jpg", "expected");
    }

    [Fact]
    public async Task A_truncated_jpeg_is_refused()
    {
        var whole = await File.ReadAllBytesAsync(CaseFile("P03.jpg"), TestContext.Current.CancellationToken);
        await File.WriteAllBytesAsync(
            CaseFile("P03.jpg"),
            whole[..(whole.Length / 2)],
            TestContext.Current.CancellationToken
        );

        await Refused("P03.jpg", "damaged or unfinished", "expected a whole photograph");
    }

    [Theory]
    [InlineData(1, "1 × 1")]
    [InlineData(30_000, "30000 × 30000")]
    public async Task An_image_of_impossible_size_is_refused_before_it_is_decoded(int side, string found)
    {
        await File.WriteAllBytesAsync(CaseFile("P03.jpg"), Png(side), TestContext.Current.CancellationToken);

        await Refused("P03.jpg", found, "pixels");
    }

    [Theory]
    [InlineData("section: round 120 mm", "section: round 0 mm", "field section", "1 to 2000 mm")]
    [InlineData("section: round 120 mm", "section: round -5 mm", "field section", "1 to 2000 mm")]
    [InlineData("species: European larch", "species: moonwood", "field species", "a species in the catalogue")]
    [InlineData("useClass: 3.2", "useClass: 9", "field useClass", "1, 2, 3, 3c, 3u, 3.1, 3.2, 4 or 5")]
    [InlineData("client:", "colour: red\nclient:", "field colour", "an unknown field")]
    [InlineData("indicator: copper-blue", "indicator: beetroot", "field indicator", "copper-blue")]
    public async Task A_wrong_field_is_refused(string right, string wrong, string place, string expected)
    {
        var text = await File.ReadAllTextAsync(CaseFile("case.yaml"), TestContext.Current.CancellationToken);
        await File.WriteAllTextAsync(
            CaseFile("case.yaml"),
            text.Replace(right, wrong, StringComparison.Ordinal),
            TestContext.Current.CancellationToken
        );

        await Refused("case.yaml", place, expected);
    }

    [Fact]
    public async Task A_text_where_a_number_belongs_in_a_table_is_refused()
    {
        await File.WriteAllTextAsync(
            CaseFile("assays.csv"),
            "sample,retention_kg_per_m3,u_kg_per_m3\ncomposite,enough,0.3\n",
            TestContext.Current.CancellationToken
        );

        await Refused("assays.csv, line 2", "field retention_kg_per_m3", "found \"enough\"", "expected a number");
    }

    [Fact]
    public async Task A_store_that_cannot_be_opened_leaves_no_report()
    {
        Directory.CreateDirectory(_folder.At("cases.db"));

        await Refused("cases.db", "field store", "expected a case store");
    }

    [Theory]
    [InlineData("cas")]
    [InlineData("case")]
    [InlineData("case", "x", "--wrong")]
    [InlineData("serve", "--port", "99999")]
    public async Task A_command_line_that_cannot_be_read_ends_with_status_2(params string[] args)
    {
        var run = await AlburnumRun.Of(args);

        Assert.Equal(CommandLine.Refused, run.Status);
        Assert.StartsWith("alburnum: ", run.Errors, StringComparison.Ordinal);
    }

    private async Task Refused(params string[] words)
    {
        var run = await AlburnumRun.Of("case", _folder.Path, "--store", _folder.At("cases.db"));

        Assert.Equal(CommandLine.Refused, run.Status);
        Assert.All(words, word => Assert.Contains(word, run.Errors, StringComparison.Ordinal));
        Assert.Single(run.Errors.TrimEnd().Split('\n'));
        Assert.False(File.Exists(CaseFile("report.pdf")) || File.Exists(CaseFile("report.json")));
        Assert.Empty(Directory.EnumerateFiles(_folder.Path, "*.part"));
        Assert.False(File.Exists(_folder.At("cases.db")));
    }

    private string CaseFile(string name) => _folder.At(name);

    /// <summary>The start of a PNG that claims to be square, and nothing behind it.</summary>
    private static byte[] Png(int side)
    {
        var header = new byte[13];
        BinaryPrimitives.WriteInt32BigEndian(header, side);
        BinaryPrimitives.WriteInt32BigEndian(header.AsSpan(4), side);
        (header[8], header[9]) = (8, 2);
        byte[] chunk = [.. "IHDR"u8, .. header];
        var check = new byte[4];
        BinaryPrimitives.WriteUInt32BigEndian(check, Crc32.HashToUInt32(chunk));
        return
        [
            0x89,
            .. "PNG\r\n\x1a\n"u8,
            0,
            0,
            0,
            13,
            .. chunk,
            .. check,
            0,
            0,
            0,
            0,
            .. "IDAT"u8,
            0x35,
            0xAF,
            0x06,
            0x1E,
        ];
    }
}
