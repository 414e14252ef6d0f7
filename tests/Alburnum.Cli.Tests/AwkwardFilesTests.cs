using System.Text;
using Alburnum.Tests.Shared;
using SkiaSharp;

namespace Alburnum.Cli.Tests;

/// <summary>The program itself, given files and words that it cannot use: one message, exit status 2, soon, never a trace.</summary>
public sealed class AwkwardFilesTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData("judge table {0} --must-pass 75")]
    [InlineData("charge plan {0}")]
    public async Task A_pipe_is_refused_and_not_waited_for(string line)
    {
        var pipe = _folder.At("pipe");
        await RealProgram.RunAsync("mkfifo", [pipe]);

        await RefusedAsync($"{pipe}: found a pipe, a device or something else that is not a plain file", line, pipe);
    }

    [Fact]
    public async Task A_pipe_among_photographs_is_refused_and_not_waited_for()
    {
        var pipe = _folder.At("pipe.jpg");
        await RealProgram.RunAsync("mkfifo", [pipe]);

        var run = await AlburnumAsync(["measure", pipe, "--section", "100x100"]);

        Assert.Equal(CommandLine.Refused, run.Status);
        Assert.Contains("found a pipe, a device", run.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_pipe_in_a_case_folder_is_refused_and_not_waited_for()
    {
        var folder = CaseFolder();
        File.Delete(Path.Combine(folder, "P06.jpg"));
        await RealProgram.RunAsync("mkfifo", [Path.Combine(folder, "P06.jpg")]);

        await RefusedAsync(
            "P06.jpg, which is not a plain file",
            "case {0} --store {1}",
            folder,
            _folder.At("cases.db")
        );
    }

    [Fact]
    public async Task A_link_to_itself_in_a_case_folder_leads_nowhere()
    {
        var folder = CaseFolder();
        var photograph = Path.Combine(folder, "P06.jpg");
        File.Delete(photograph);
        File.CreateSymbolicLink(photograph, photograph);

        await RefusedAsync("P06.jpg", "case {0} --store {1}", folder, _folder.At("cases.db"));
    }

    [Fact]
    public async Task A_store_that_is_a_link_to_itself_is_refused_by_name()
    {
        var store = _folder.At("cases.db");
        File.CreateSymbolicLink(store, store);

        await RefusedAsync($"{store}: found something that cannot be used", "store check --store {0}", store);
    }

    [Fact]
    public async Task A_link_out_of_the_case_folder_is_not_followed()
    {
        var folder = CaseFolder();
        var photograph = Path.Combine(folder, "P06.jpg");
        File.Move(photograph, _folder.At("elsewhere.jpg"));
        File.CreateSymbolicLink(photograph, _folder.At("elsewhere.jpg"));

        await RefusedAsync(
            "P06.jpg, which lies outside the folder",
            "case {0} --store {1}",
            folder,
            _folder.At("cases.db")
        );
    }

    [Fact]
    public async Task A_name_with_a_zero_in_it_is_a_file_that_is_not_there()
    {
        var folder = CaseFolder();
        var file = Path.Combine(folder, "case.yaml");
        var text = await File.ReadAllTextAsync(file, Stop);
        await File.WriteAllTextAsync(
            file,
            text.Replace("photograph: P06.jpg", "photograph: \"P06\\0.jpg\"", StringComparison.Ordinal),
            Stop
        );

        await RefusedAsync(
            "P06\\u0000.jpg, which is not there",
            "case {0} --store {1}",
            folder,
            _folder.At("cases.db")
        );
    }

    [Theory]
    [InlineData("case {0} --store {1} --out /proc/x", "/proc/x: found a place that takes no files")]
    [InlineData("case {0} --store /proc/x", "/proc/x, field store: found a place that takes no files")]
    public async Task A_place_that_takes_no_files_is_refused_before_any_photograph_is_read(string line, string message)
    {
        var folder = CaseFolder();

        await RefusedAsync(message, line, folder, _folder.At("cases.db"));

        Assert.Equal(
            ["P06.jpg", "case.yaml"],
            Directory.GetFileSystemEntries(folder).Select(Path.GetFileName).Order(StringComparer.Ordinal)
        );
        Assert.False(File.Exists(_folder.At("cases.db")));
    }

    [Fact]
    public async Task A_home_folder_in_which_nothing_can_be_kept_is_refused_with_the_store_in_it()
    {
        foreach (var words in new[] { new[] { "case", CaseFolder(), "--out", _folder.Path }, ["serve", "--port", "0"] })
        {
            var run = await RealProgram.RunAsync(
                words,
                ("HOME", "/proc/none"),
                ("XDG_DATA_HOME", null),
                ("ALBURNUM_STORE", null)
            );

            Assert.Equal(
                (
                    CommandLine.Refused,
                    "",
                    "/proc/none/.local/share/alburnum/cases.db, field store: found a place that takes no files, expected a case store, or a path where one can be made."
                ),
                (run.Status, run.Output, run.Errors.Trim())
            );
        }
    }

    [Fact]
    public async Task A_photograph_six_times_as_long_as_high_is_a_case_that_asks_for_the_outline()
    {
        var folder = CaseFolder();
        var file = Path.Combine(folder, "P06.jpg");
        using (var photograph = SKBitmap.Decode(file))
        using (var wide = new SKBitmap(6 * photograph.Width, photograph.Height))
        {
            using (var canvas = new SKCanvas(wide))
            using (var image = SKImage.FromBitmap(photograph))
                canvas.DrawImage(image, 2 * photograph.Width, 0, SKSamplingOptions.Default);
            Save(wide, file, SKEncodedImageFormat.Jpeg);
        }

        var run = await AlburnumAsync(["case", folder, "--store", _folder.At("cases.db"), "--out", _folder.Path]);

        Assert.Equal((CommandLine.Done, ""), (run.Status, run.Errors));
        Assert.Contains("1 piece not determined", run.Output, StringComparison.Ordinal);
        Assert.Contains("To point an outline out", run.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("P06.jpg", 255, "no_colour")]
    [InlineData("P06.png", 128, "too_little_shown")]
    public async Task A_photograph_without_colour_or_half_transparent_is_judged_undecided(
        string name,
        byte cover,
        string fault
    )
    {
        var folder = CaseFolder();
        var (file, changed) = (Path.Combine(folder, "P06.jpg"), Path.Combine(folder, name));
        using (var photograph = SKBitmap.Decode(file))
        using (var drawn = new SKBitmap(photograph.Width, photograph.Height))
        {
            for (var y = 0; y < drawn.Height; y++)
            for (var x = 0; x < drawn.Width; x++)
            {
                var c = photograph.GetPixel(x, y);
                var grey = (byte)((c.Red + c.Green + c.Blue) / 3);
                drawn.SetPixel(x, y, cover < 255 ? c.WithAlpha(cover) : new SKColor(grey, grey, grey));
            }
            File.Delete(file);
            Save(drawn, changed, cover < 255 ? SKEncodedImageFormat.Png : SKEncodedImageFormat.Jpeg);
        }
        var yaml = Path.Combine(folder, "case.yaml");
        await File.WriteAllTextAsync(
            yaml,
            (await File.ReadAllTextAsync(yaml, Stop)).Replace("P06.jpg", name, StringComparison.Ordinal),
            Stop
        );

        var judged = await AlburnumAsync(["judge", "case", folder]);
        var run = await AlburnumAsync(["case", folder, "--store", _folder.At("cases.db"), "--out", _folder.Path]);

        Assert.Contains("undecided", judged.Output, StringComparison.Ordinal);
        Assert.Contains("Penetration rule undecided", run.Output, StringComparison.Ordinal);
        Assert.Contains(
            "1 piece not determined: P06",
            string.Join(' ', run.Output.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)),
            StringComparison.Ordinal
        );
        Assert.Contains(fault, await File.ReadAllTextAsync(_folder.At("report.json"), Stop), StringComparison.Ordinal);
        Assert.Equal((CommandLine.Done, CommandLine.Done), (judged.Status, run.Status));
    }

    private static void Save(SKBitmap picture, string file, SKEncodedImageFormat format)
    {
        using var data = picture.Encode(format, 90);
        File.WriteAllBytes(file, data.ToArray());
    }

    [Theory]
    [InlineData("requirement --component kerb --section {0}", "round ١٠٠")]
    public async Task Digits_of_another_script_are_no_number(string line, string section) =>
        await RefusedAsync(section, line, section);

    [Theory]
    [InlineData(
        "requirement --component kerb --svg /tmp",
        "/tmp: found a folder, expected a file that can be written."
    )]
    [InlineData("charge plan /tmp", "/tmp: found a folder, expected a charge file.")]
    [InlineData("charge plan /dev/null", "/dev/null, line 1: found an empty file")]
    [InlineData("sample attributes --aql 1e308 --lot 50", "--aql: found 1E+308, expected 0.01 to 1000 (an AQL).")]
    [InlineData("sample attributes --aql 10 --lot abc", "--lot: found abc, expected a number")]
    public async Task What_cannot_be_used_is_named(string line, string message) => await RefusedAsync(message, line);

    [Fact]
    public async Task A_case_folder_that_is_not_there_is_named_with_its_odd_signs_shown() =>
        await RefusedAsync("ca\\u202Ese/case.yaml: found no such file", "case {0}", _folder.At("ca\u202ese"));

    [Fact]
    public async Task A_log_of_thousands_of_pieces_is_refused() =>
        await RefusedAsync(
            "pieces of 10 × 10 mm, expected a log and a section that give at most 500 pieces",
            "saw {0} 10x10 --log-diameter 2000 --pattern grid --depth 2",
            "Scots pine"
        );

    [Fact]
    public async Task A_command_that_only_has_others_below_it_is_refused() =>
        Assert.Equal(CommandLine.Refused, (await AlburnumAsync(["judge"])).Status);

    [Fact]
    public async Task Signs_that_would_steer_the_terminal_are_shown_as_numbers()
    {
        var table = _folder.Write("table.csv", "piece,result\nP1,\u001b[31mred\u202eabc\n");

        var errors = await RefusedAsync("\"\\u001B[31mred\\u202Eabc\"", "judge table {0} --must-pass 75", table);

        Assert.DoesNotContain('\u001b', errors);
    }

    [Fact]
    public async Task Signs_in_the_words_of_a_case_that_succeeds_are_shown_as_numbers()
    {
        var folder = CaseFolder();
        var file = Path.Combine(folder, "case.yaml");
        var words = await File.ReadAllTextAsync(file, Stop);
        await File.WriteAllTextAsync(
            file,
            words
                .Replace(
                    "title: Orchard posts",
                    "title: \"O\\e[31m\\u202Eposts\\a\\U000E0041\"",
                    StringComparison.Ordinal
                )
                .Replace("TH-2026-011", "\"T\\e]0;owned\\a\\x9B1m\"", StringComparison.Ordinal),
            Stop
        );

        var run = await AlburnumAsync(["case", folder, "--store", _folder.At("cases.db")]);

        Assert.Equal(CommandLine.Done, run.Status);
        Assert.Contains("O\\u001B[31m\\u202Eposts\\u0007\\uDB40\\uDC41", run.Output, StringComparison.Ordinal);
        Assert.Contains("T\\u001B]0;owned\\u0007\\u009B1m", run.Output, StringComparison.Ordinal);
        AssertNothingSteers(run);
    }

    [Theory]
    [InlineData("--json")]
    [InlineData]
    public async Task Signs_in_the_name_of_a_photograph_are_shown_as_numbers(params string[] asked)
    {
        var photograph = _folder.At("a\u001b[31m\u202eb.jpg");
        File.Copy(Path.Combine(CaseFolder(), "P06.jpg"), photograph);

        var run = await AlburnumAsync(["measure", photograph, "--section", "100x100", .. asked]);

        Assert.Equal(CommandLine.Done, run.Status);
        Assert.Contains("a\\u001B[31m\\u202Eb.jpg", run.Output + run.Errors, StringComparison.Ordinal);
        AssertNothingSteers(run);
    }

    [Fact]
    public async Task Signs_in_a_table_that_is_judged_are_shown_as_numbers()
    {
        var rows = Enumerable.Range(1, 8).Select(i => $"P{i}\u001b[31m\u202e,met\n");
        var table = _folder.Write("table.csv", $"piece,result\n{string.Concat(rows)}");

        AssertNothingSteers(await AlburnumAsync(["judge", "table", table, "--must-pass", "75"]));
    }

    private static void AssertNothingSteers(AlburnumRun run) =>
        Assert.DoesNotContain(
            (run.Output + run.Errors).EnumerateRunes(),
            rune => rune.Value != '\n' && InputProblem.Visible(rune.ToString()) != rune.ToString()
        );

    [Fact]
    public async Task Sixty_thousand_unknown_fields_are_told_as_twenty_and_a_count()
    {
        var file = _folder.Write("many.yaml", string.Concat(Enumerable.Range(0, 60_000).Select(i => $"k{i}: 1\n")));

        var errors = await RefusedAsync("more.", "charge plan {0}", file);

        Assert.Equal(21, errors.Trim().Split('\n').Length);
    }

    [Theory]
    [InlineData("charge;mean_depth_mm\n1;8,5\n", "line 1: found semicolons between the columns")]
    [InlineData(
        "charge,mean_depth_mm\n1,\"8,5\"\n",
        "line 2, row \"1\", field mean_depth_mm: found \"8,5\", with a decimal comma"
    )]
    [InlineData("charge,mean_depth_mm\n1,8\nGr\u00fcn,8\n", "line 3: found letters in an encoding other than UTF-8")]
    public async Task A_table_of_another_habit_is_told_what_is_different(string text, string message)
    {
        var table = _folder.At("table.csv");
        await File.WriteAllBytesAsync(table, Encoding.Latin1.GetBytes(text), Stop);

        await RefusedAsync(message, "history charges {0}", table);
    }

    [Fact]
    public async Task A_photograph_that_is_missing_is_told_and_not_that_no_piece_is_left_without_it()
    {
        var folder = CaseFolder();
        File.Delete(Path.Combine(folder, "P06.jpg"));

        var errors = await RefusedAsync(
            "field photograph: found P06.jpg, which is not there",
            "case {0} --store {1}",
            folder,
            _folder.At("cases.db")
        );

        Assert.Single(errors.Trim().Split('\n'));
    }

    [Fact]
    public async Task A_tab_in_a_case_is_told_with_its_own_line() =>
        await RefusedAsync(
            "line 2: found a tab before the text, expected spaces.",
            "charge plan {0}",
            _folder.Write("tab.yaml", "reference: A\n\ttitle: B\n")
        );

    [Fact]
    public async Task A_fault_of_the_program_says_so_in_one_sentence()
    {
        using var errors = new StringWriter();
        using var console = new Spectre.Console.Testing.TestConsole();

        var status = await CommandLine.RunAsync(["rulebook", "list"], null!, console, errors, Stop);

        Assert.Equal(CommandLine.Fault, status);
        Assert.StartsWith("alburnum: this is a fault in Alburnum", errors.ToString(), StringComparison.Ordinal);
        Assert.Single(errors.ToString().Trim().Split('\n'));
    }

    [Fact]
    public async Task A_port_in_use_is_one_sentence()
    {
        using var taken = new System.Net.Sockets.TcpListener(System.Net.IPAddress.Loopback, 0);
        taken.Start();
        var port = ((System.Net.IPEndPoint)taken.LocalEndpoint).Port;

        var errors = await RefusedAsync(
            $"--port: found {port}, which another program uses",
            "serve --port {0} --store {1}",
            $"{port}",
            _folder.At("cases.db")
        );

        Assert.Single(errors.Trim().Split('\n'));
    }

    private string CaseFolder() => RealProgram.CopyCase(_folder);

    // The words of a line; a number in braces stands for one that may hold spaces.
    private static async Task<string> RefusedAsync(string message, string line, params string[] words)
    {
        var run = await AlburnumAsync([
            .. line.Split(' ').Select(word => word is ['{', var digit, '}'] ? words[digit - '0'] : word),
        ]);

        Assert.Contains(message, run.Errors, StringComparison.Ordinal);
        Assert.Equal(CommandLine.Refused, run.Status);
        Assert.Equal("", run.Output);
        return run.Errors;
    }

    private static Task<AlburnumRun> AlburnumAsync(string[] words) => RealProgram.RunAsync(words);
}
