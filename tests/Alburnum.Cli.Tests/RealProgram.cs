using System.Diagnostics;
using Alburnum.Tests.Shared;

namespace Alburnum.Cli.Tests;

/// <summary>The program itself, started as a user starts it.</summary>
internal static class RealProgram
{
    private static readonly TimeSpan Soon = TimeSpan.FromSeconds(40);

    /// <summary>Its file.</summary>
    public static string File { get; } =
        Repository.At("artifacts", "bin", "Alburnum.Cli", "release", "alburnum-cli.dll");

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    /// <summary>Runs it to its end, which must come soon.</summary>
    /// <param name="words">What stands after its name.</param>
    /// <param name="variables">Environment variables that are set; null takes one away.</param>
    public static Task<AlburnumRun> RunAsync(
        IReadOnlyList<string> words,
        params IReadOnlyList<(string Name, string? Value)> variables
    ) => RunAsync("dotnet", ["exec", File, .. words], variables);

    /// <summary>Runs any program likewise.</summary>
    public static async Task<AlburnumRun> RunAsync(
        string file,
        IReadOnlyList<string> words,
        params IReadOnlyList<(string Name, string? Value)> variables
    )
    {
        using var ended = CancellationTokenSource.CreateLinkedTokenSource(Stop);
        ended.CancelAfter(Soon);
        using var program = Start(file, words, variables);
        try
        {
            var output = program.StandardOutput.ReadToEndAsync(ended.Token);
            var errors = await program.StandardError.ReadToEndAsync(ended.Token);
            await program.WaitForExitAsync(ended.Token);
            return new(program.ExitCode, await output, errors);
        }
        finally
        {
            program.Kill();
        }
    }

    /// <summary>Starts any program; whoever does so ends it.</summary>
    public static Process Start(
        string file,
        IReadOnlyList<string> words,
        params IReadOnlyList<(string Name, string? Value)> variables
    )
    {
        var start = new ProcessStartInfo(file, words)
        {
            UseShellExecute = false,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        foreach (var (name, value) in variables)
            start.Environment[name] = value;
        return Process.Start(start)!;
    }

    /// <summary>A copy of a case of one piece, in a folder of its own.</summary>
    /// <param name="folder">Where it is put.</param>
    public static string CopyCase(TemporaryFolder folder)
    {
        var copy = Directory.CreateDirectory(folder.At("case")).FullName;
        foreach (var file in Directory.GetFiles(Repository.At("tests", "Alburnum.Records.Tests", "Store", "Case")))
            System.IO.File.Copy(file, Path.Combine(copy, Path.GetFileName(file)));
        return copy;
    }
}
