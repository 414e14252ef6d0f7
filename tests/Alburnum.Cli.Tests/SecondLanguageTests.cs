using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
using Alburnum.Cli.Tests.Approved;
using Alburnum.Reports.Words;
using Alburnum.Tests.Shared;

namespace Alburnum.Cli.Tests;

/// <summary>
/// A second language is a file and nothing else: with a language that puts each English sentence in brackets, nothing that a command says of a result stands
/// outside the brackets but what comes from data.
/// </summary>
public sealed partial class SecondLanguageTests
{
    private const string Bracketed = "x-bracketed";

    /// <summary>Each command with the file whose own texts it repeats; empty where it repeats none.</summary>
    public static TheoryData<string, string> Commands =>
        new()
        {
            { "requirement-post", "data/rulebooks/british/2014.yaml" },
            { "requirement-post-30", "data/rulebooks/british/2014.yaml" },
            { "use-class-post", "" },
            { "use-class-open", "" },
            { "rulebook-check", "data/rulebooks/british/2014.yaml" },
            { "predict-spruce", "" },
            { "predict-pine-sapwood", "" },
            { "saw-quartered", "" },
            { "incise-spruce", "" },
            { "sweep-spruce", "" },
            { "boron", "" },
            { "charge-plan", "tests/Alburnum.Cli.Tests/Approved/input/posts.yaml" },
            { "charge-account", "tests/Alburnum.Cli.Tests/Approved/input/posts.yaml" },
            { "measure-purlin", "" },
            { "measure-joist", "" },
            { "case-orchard", "examples/orchard-posts/case.yaml" },
            { "case-purlins", "examples/barn-purlins/case.yaml" },
            { "case-paddock", "tests/Alburnum.Cli.Tests/Approved/input/paddock-posts/case.yaml" },
            { "sample-attributes", "data/sampling/mil-std-105e.yaml" },
            { "sample-double", "" },
            { "sample-sequential", "" },
            { "sample-variables", "" },
            { "sample-show", "" },
        };

    [Theory]
    [MemberData(nameof(Commands))]
    public async Task What_a_command_says_of_its_result_comes_from_the_language_file(string name, string data)
    {
        Choose();
        using var folder = new TemporaryFolder();
        var (status, output, _) = await ListedCommands.RunAsync(
            ListedCommands.All.Single(command => command.Name == name).Typed,
            folder
        );
        var repeated = data.Length > 0 ? File.ReadAllText(Repository.At(data)) : "";

        Assert.Equal(CommandLine.Done, status);
        Assert.Contains("⟦", output, StringComparison.Ordinal);
        Assert.Equal(
            "",
            string.Join(
                " ",
                Outside(output.Replace(folder.Path, "", StringComparison.Ordinal)).Except(Words(repeated), StringComparer.Ordinal)
            )
        );
    }

    /// <summary>The words that stand outside every bracket.</summary>
    private static IEnumerable<string> Outside(string text)
    {
        while (Innermost().IsMatch(text))
            text = Innermost().Replace(text, " ");
        return Words(text).Except(["mm", "kg", "jpg"], StringComparer.Ordinal);
    }

    private static IEnumerable<string> Words(string text) => Word().Matches(text).Select(word => word.Value.Trim('.'));

    private static void Choose()
    {
        using var english = File.OpenRead(Repository.At("src", "Alburnum.Reports", "Words", "en.json"));
        var sections = JsonSerializer.Deserialize<Dictionary<string, Dictionary<string, string>>>(english)!;
        var wrapped = sections.ToDictionary(
            section => section.Key,
            section => section.Value.ToDictionary(entry => entry.Key, entry => $"⟦{entry.Value}⟧")
        );
        Wording.Add(Wording.Read(Bracketed, new MemoryStream(JsonSerializer.SerializeToUtf8Bytes(wrapped))));
        CultureInfo.CurrentUICulture = CultureInfo.GetCultureInfo(Bracketed);
    }

    [GeneratedRegex("⟦[^⟦⟧]*⟧")]
    private static partial Regex Innermost();

    [GeneratedRegex(@"\p{L}{2,}[\w.-]*")]
    private static partial Regex Word();
}
