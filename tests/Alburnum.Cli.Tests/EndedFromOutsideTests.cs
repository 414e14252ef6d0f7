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
        using var program = Start(
            "dotnet",
            ["exec", Program, "measure", .. photographs, "--section", "75x200", "--overlay", _folder.At("drawn")]
        );
        // The first photograph is being read.
        while (await program.StandardOutput.ReadLineAsync(Stop) is { } line)
            if (line.StartsWith("Measuring", StringComparison.Ordinal))
                break;
        using (var kill = Start("kill", ["-TERM", $"{program.Id}"]))
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
    public async Task Output_that_cannot_be_written_to_is_one_line_and_a_refusal()
    {
        using var program = Start("sh", ["-c", $"dotnet exec '{Program}' rulebook list > /dev/full"]);
        var said = await program.StandardError.ReadToEndAsync(Stop);
        await program.WaitForExitAsync(Stop);

        Assert.Equal(CommandLine.Refused, program.ExitCode);
        Assert.Equal("alburnum: what was found could not be printed: the output cannot be written to.\n", said);
    }

    private static Process Start(string file, IReadOnlyList<string> words) =>
        Process.Start(
            new ProcessStartInfo(file, words)
            {
                UseShellExecute = false,
                RedirectStandardOutput = true,
                RedirectStandardError = true,
            }
        )!;
}
