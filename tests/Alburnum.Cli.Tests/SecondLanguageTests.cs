using System.Globalization;
using Alburnum.Cli.Tests.Approved;
using Alburnum.Reports.Words;
using Alburnum.Tests.Shared;

namespace Alburnum.Cli.Tests;

/// <summary>
/// A second language is a file and nothing else: with a language that puts each English sentence in brackets, nothing that a command says of a result stands
/// outside the brackets but what comes from data.
/// </summary>
public sealed class SecondLanguageTests
{
    /// <summary>The species that the commands ask about.</summary>
    private const string Species = "Sitka spruce";

    /// <summary>Each command with the files whose own texts it repeats; empty where it repeats none.</summary>
    public static TheoryData<string, string> Commands =>
        new()
        {
            { "requirement-post", "data/rulebooks/british/2014.yaml data/penetration-classes.yaml" },
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
        var repeated = data.Split(' ', StringSplitOptions.RemoveEmptyEntries)
            .Append("data/sources.yaml")
            .Select(file => File.ReadAllText(Repository.At(file)))
            .Append(Species)
            .SelectMany(BracketedLanguage.Words);

        Assert.Equal(CommandLine.Done, status);
        Assert.Contains("⟦", output, StringComparison.Ordinal);
        Assert.Equal(
            "",
            string.Join(
                " ",
                BracketedLanguage
                    .WordsOutside(output.Replace(folder.Path, "", StringComparison.Ordinal))
                    .Except(repeated, StringComparer.Ordinal)
            )
        );
    }

    private static void Choose()
    {
        Wording.Add(Wording.Read(BracketedLanguage.Name, BracketedLanguage.File()));
        CultureInfo.CurrentUICulture = CultureInfo.GetCultureInfo(BracketedLanguage.Name);
    }
}
