using System.Text.RegularExpressions;
using Alburnum.Tests.Shared;

namespace Alburnum.Cli.Tests.Approved;

/// <summary>The pages on JSON, held against what the commands print.</summary>
public sealed partial class DescribedFieldsTests
{
    private static readonly string Outputs = Repository.At("tests", "Alburnum.Cli.Tests", "Approved", "output");

    [Fact]
    public void Every_field_that_a_command_prints_is_described_in_the_docs()
    {
        var described = Directory
            .EnumerateFiles(Repository.At("docs", "json"), "*.md")
            .Append(Repository.At("docs", "json.md"))
            .SelectMany(page => Code().Matches(File.ReadAllText(page)))
            .Select(match => match.Groups["name"].Value)
            .ToHashSet(StringComparer.Ordinal);

        var missing = Directory
            .EnumerateFiles(Outputs)
            .SelectMany(file =>
                Field()
                    .Matches(File.ReadAllText(file))
                    .Select(match => (File: Path.GetFileName(file), Field: match.Groups["name"].Value))
            )
            .Where(entry => !described.Contains(entry.Field))
            .Distinct()
            .ToList();

        Assert.True(missing.Count == 0, string.Join('\n', missing));
    }

    [GeneratedRegex("`(?<name>[a-z0-9_]+)(?:\\[\\])?`", RegexOptions.ExplicitCapture)]
    private static partial Regex Code();

    [GeneratedRegex("^ +\"(?<name>[a-z0-9_]+)\": ", RegexOptions.ExplicitCapture | RegexOptions.Multiline)]
    private static partial Regex Field();
}
