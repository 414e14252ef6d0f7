using System.Diagnostics;
using Alburnum.Tests.Shared;

namespace Alburnum.Cli.Tests;

/// <summary>The program itself, asked to end, or with nowhere to print to.</summary>
public sealed class EndedFromOutsideTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private static string Program => Repository.At("artifacts", "bin", "Alburnum.Cli", "release", "alburnum-cli.dll");

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task Asked_to_end_it_takes_back_what_is_half_written()
    {
        var photographs = Directory.GetFiles(Repository.At("examples", "barn-purlins"), "*.jpg");
        using var program = RealProgram.Start(
            "dotnet",
            ["exec", Program, "measure", .. photographs, "--section", "75x200", "--overlay", _folder.At("drawn")]
        );
        // The first photograph is being read.
        while (await program.StandardOutput.ReadLineAsync(Stop) is { } line)
            if (line.StartsWith("Measuring", StringComparison.Ordinal))
                break;
        using (var kill = RealProgram.Start("kill", ["-TERM", $"{program.Id}"]))
            await kill.WaitForExitAsync(Stop);
        await program.WaitForExitAsync(Stop);

        Assert.Equal(CommandLine.Stopped, program.ExitCode);
        Assert.EndsWith(
            "Stopped; nothing was written.\n",
            await program.StandardError.ReadToEndAsync(Stop),
            StringComparison.Ordinal
        );
        Assert.Empty(Directory.Exists(_folder.At("drawn")) ? Directory.GetFiles(_folder.At("drawn")) : []);
    }

    [Fact]
    public async Task Asked_to_end_the_server_does_not_wait_for_a_browser_that_is_still_sending()
    {
        var (program, address) = await ServeAsync();
        using var ending = program;
        using var browser = new System.Net.Sockets.TcpClient(address.Host, address.Port);
        await browser
            .GetStream()
            .WriteAsync(
                "POST /api/requirement HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/json\r\nContent-Length: 100\r\n\r\n{"u8.ToArray(),
                Stop
            );
        await Task.Delay(300, Stop);

        using (var kill = RealProgram.Start("kill", ["-TERM", $"{program.Id}"]))
            await kill.WaitForExitAsync(Stop);
        var clock = Stopwatch.StartNew();
        await program.WaitForExitAsync(Stop);

        // It takes a second on a quiet machine; without a limit of its own it would wait for half a minute.
        Assert.InRange(clock.Elapsed, TimeSpan.Zero, TimeSpan.FromSeconds(4));
        Assert.Equal(CommandLine.Done, program.ExitCode);
    }

    [Fact]
    public async Task The_server_tells_whoever_runs_it_that_requests_were_refused()
    {
        var (program, address) = await ServeAsync();
        using var ending = program;
        using var browser = new HttpClient();
        browser.DefaultRequestHeaders.Add("Sec-Fetch-Site", "cross-site");

        for (var i = 0; i < 3; i++)
            await browser.GetAsync(new Uri(address, "cases/1/report.pdf"), Stop);
        using (var kill = RealProgram.Start("kill", ["-TERM", $"{program.Id}"]))
            await kill.WaitForExitAsync(Stop);

        var said = await program.StandardOutput.ReadToEndAsync(Stop);
        Assert.Single(said.Split('\n'), line => line.Contains("refused since", StringComparison.Ordinal));
        Assert.Contains(
            "Warning: Requests refused since the last such line: 1, with status 403.",
            said,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task The_server_leaves_no_key_in_a_new_home_folder_and_warns_of_none()
    {
        var home = Directory.CreateDirectory(_folder.At("home")).FullName;
        var (program, address) = await ServeAsync(("HOME", home));
        using var ending = program;
        using var browser = new HttpClient();
        var page = await browser.GetStringAsync(address, Stop);
        using (var kill = RealProgram.Start("kill", ["-TERM", $"{program.Id}"]))
            await kill.WaitForExitAsync(Stop);

        Assert.Contains("<html", page, StringComparison.Ordinal);
        Assert.DoesNotContain("Warning", await program.StandardOutput.ReadToEndAsync(Stop), StringComparison.Ordinal);
        Assert.Equal("", await program.StandardError.ReadToEndAsync(Stop));
        Assert.Empty(Directory.GetFiles(home, "*", SearchOption.AllDirectories));
    }

    [Fact]
    public async Task Output_that_cannot_be_written_to_is_one_line_and_a_refusal()
    {
        using var program = RealProgram.Start("sh", ["-c", $"dotnet exec '{Program}' rulebook list > /dev/full"]);
        var said = await program.StandardError.ReadToEndAsync(Stop);
        await program.WaitForExitAsync(Stop);

        Assert.Equal(CommandLine.Refused, program.ExitCode);
        Assert.Equal("alburnum: what was found could not be printed: the output cannot be written to.\n", said);
    }

    /// <summary>The server on a port of its own, once it listens.</summary>
    private async Task<(Process Program, Uri Address)> ServeAsync(
        params IReadOnlyList<(string Name, string? Value)> variables
    )
    {
        var program = RealProgram.Start(
            "dotnet",
            ["exec", Program, "serve", "--port", "0", "--store", _folder.At("cases.db")],
            variables
        );
        string? line;
        while ((line = await program.StandardOutput.ReadLineAsync(Stop)) is not null)
            if (line.StartsWith("Open ", StringComparison.Ordinal))
                break;
        return (program, new Uri(line!.Split(' ')[1]));
    }
}
