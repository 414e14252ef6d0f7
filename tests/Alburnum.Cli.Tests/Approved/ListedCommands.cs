using System.Globalization;
using System.Text.RegularExpressions;
using Alburnum.Tests.Shared;
using Spectre.Console.Testing;

namespace Alburnum.Cli.Tests.Approved;

/// <summary>The commands of commands.txt, run as they are typed.</summary>
internal static partial class ListedCommands
{
    public static string Folder { get; } = Repository.At("tests", "Alburnum.Cli.Tests", "Approved");

    public static IReadOnlyList<(string Name, string Typed)> All { get; } =
    [
        .. File.ReadAllLines(Path.Combine(Folder, "commands.txt"))
            .Where(line => line.Length > 0 && line[0] != '#')
            .Select(line => line.Split(": ", 2))
            .Select(parts => (parts[0], parts[1])),
    ];

    public static async Task<(int Status, string Output, string Errors)> RunAsync(string typed, TemporaryFolder folder)
    {
        using var console = new TestConsole().Width(120);
        using var errors = new StringWriter(CultureInfo.InvariantCulture);
        var words = Words()
            .Matches(typed)
            .Select(word => word.Value.Trim('"'))
            .Select(word => word.Replace("{out}", folder.Path, StringComparison.Ordinal))
            .Select(word =>
                word.StartsWith("input/", StringComparison.Ordinal) ? Path.Combine(Folder, word)
                : word.StartsWith("examples/", StringComparison.Ordinal) ? Repository.At(word)
                : word
            );
        var status = await CommandLine.RunAsync(
            [.. words],
            AlburnumRun.Facts,
            console,
            errors,
            TestContext.Current.CancellationToken
        );
        return (status, console.Output, errors.ToString());
    }

    [GeneratedRegex("\"[^\"]*\"|\\S+")]
    private static partial Regex Words();
}
