using System.Diagnostics;
using Alburnum.Tests.Shared;

namespace Alburnum.Cli.Tests.Completion;

/// <summary>What a shell offers after the completion script is loaded.</summary>
public sealed class CompletionTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData("rulebook", "alburnum", "ru")]
    [InlineData("check compare", "alburnum", "rulebook", "c")]
    [InlineData("--cases", "alburnum", "rulebook", "compare", "--c")]
    [InlineData("", "alburnum", "requirement", "--no-such")]
    public async Task Bash_offers_what_can_follow(string offered, params string[] typed)
    {
        var run = await AlburnumRun.Of("completion", "bash");
        Assert.Equal(("", CommandLine.Done), (run.Errors, run.Status));
        var script = _folder.Write(
            "try.sh",
            run.Output
                + $"""

                COMP_WORDS=({string.Join(' ', typed.Select(word => $"'{word}'"))})
                COMP_CWORD={typed.Length - 1}
                _alburnum
                echo "{"${COMPREPLY[*]}"}"
                """
        );
        using var bash = Process.Start(
            new ProcessStartInfo("bash", script)
            {
                RedirectStandardOutput = true,
                UseShellExecute = false,
                WorkingDirectory = _folder.Path,
            }
        )!;
        var said = await bash.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
        await bash.WaitForExitAsync(TestContext.Current.CancellationToken);

        Assert.Equal((0, offered), (bash.ExitCode, said.Trim()));
    }

    [Fact]
    public async Task Fish_is_told_what_each_command_does()
    {
        var run = await AlburnumRun.Of("completion", "fish");

        Assert.Contains("-a rulebook -d 'Codes of practice as tables", run.Output, StringComparison.Ordinal);
        Assert.Contains(
            "__fish_seen_subcommand_from rulebook; and __fish_seen_subcommand_from compare' -l cases",
            run.Output,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task A_shell_that_is_not_known_is_refused()
    {
        var run = await AlburnumRun.Of("completion", "tcsh");

        Assert.Equal(CommandLine.Refused, run.Status);
        Assert.Equal("SHELL: found tcsh, expected bash, zsh or fish.", run.Errors.Trim());
    }
}
