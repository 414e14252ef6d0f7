using System.Text.RegularExpressions;
using Alburnum.Tests.Shared;

namespace Alburnum.Web.Tests.Guarding;

/// <summary>The table in docs/security.md against the tests that it names.</summary>
public sealed partial class SecurityTableTests
{
    private static IReadOnlyList<string> Rows { get; } =
    [
        .. File.ReadLines(Repository.At("docs", "security.md"))
            .Where(line => line.StartsWith('|'))
            // The names of the columns and the rule below them.
            .Skip(2),
    ];

    [Fact]
    public void Every_item_names_a_test() =>
        Assert.All(Rows, row => Assert.NotEmpty(Named().Matches(row.Split('|')[^2])));

    [Fact]
    public void Every_test_that_is_named_exists()
    {
        var sources = Directory
            .EnumerateFiles(Repository.At("tests"), "*Tests.cs", SearchOption.AllDirectories)
            .ToLookup(file => Path.GetFileNameWithoutExtension(file), File.ReadAllText, StringComparer.Ordinal);

        Assert.All(
            Rows.SelectMany(row => Named().Matches(row)),
            named =>
                Assert.Contains(
                    sources[named.Groups["type"].Value],
                    source => source.Contains($" {named.Groups["method"].Value}(", StringComparison.Ordinal)
                )
        );
    }

    [GeneratedRegex("`(?<type>[A-Za-z]+Tests)\\.(?<method>[A-Za-z_0-9]+)`", RegexOptions.ExplicitCapture)]
    private static partial Regex Named();
}
