using Alburnum.Records.Facts;
using Alburnum.Tests.Shared;
using Spectre.Console.Testing;

namespace Alburnum.Cli.Tests;

/// <summary>One command line run in this process, with what it printed.</summary>
internal sealed record AlburnumRun(int Status, string Output, string Errors)
{
    /// <summary>The facts that ship, read once for all tests.</summary>
    public static FactLibrary Facts { get; } = new(Repository.At("data"));

    public static async Task<AlburnumRun> Of(params string[] args)
    {
        using var console = new TestConsole().Width(110);
        using var errors = new StringWriter();
        var status = await CommandLine.RunAsync(args, Facts, console, errors, TestContext.Current.CancellationToken);
        return new(status, console.Output, errors.ToString());
    }
}
