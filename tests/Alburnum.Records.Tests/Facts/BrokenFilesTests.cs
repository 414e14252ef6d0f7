using System.Text;
using Alburnum.Records.Facts;
using Alburnum.Tests.Shared;
using CsCheck;

namespace Alburnum.Records.Tests.Facts;

/// <summary>One broken file a mistake under Broken/; its first line says the words that the refusal must hold.</summary>
public sealed class BrokenFilesTests
{
    private const string Expected = "# refused with: ";

    public static TheoryData<string> Rulebooks => FilesOf("rulebook");

    public static TheoryData<string> SpeciesFiles => FilesOf("species");

    [Theory]
    [MemberData(nameof(Rulebooks))]
    public void A_broken_rulebook_is_refused_in_words(string file)
    {
        var path = PathOf("rulebook", file);
        var refused = Assert.Throws<InputRefusedException>(() => RulebookFile.Load(path, "own-1", ShippedData.Library));
        Assert.Contains(WordsOf(path), refused.Message, StringComparison.Ordinal);
        Assert.All(refused.Problems, problem => Assert.Equal(path, problem.File));
    }

    [Theory]
    [MemberData(nameof(SpeciesFiles))]
    public void A_broken_species_file_is_refused_in_words(string file)
    {
        var path = PathOf("species", file);
        var problems = new List<InputProblem>();
        FactFile.Read(path, path, problems, root => SpeciesFile.Read(root));
        Assert.Contains(problems, problem => problem.ToString().Contains(WordsOf(path), StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("{ name: sulphur, formula: S", "row \"sulphur\", field formula: found S")]
    [InlineData(
        "{ name: kupfer, alsoCalled: [Kupfer], formula: Cu",
        "field name: found Kupfer, expected a unique name"
    )]
    [InlineData(
        "{ name: copper, formula: Cu",
        "parts: [\"Cu 60 % (61 to 70 %)\"]",
        "field parts: found Cu 60 % (61 to 70 %)"
    )]
    [InlineData(
        "{ name: copper, formula: Cu",
        "mayBe: [tin]",
        "field mayBe: found tin, expected substances given above"
    )]
    public void Substances_that_are_wrong_are_refused(string substance, string changeOrMessage, string? message = null)
    {
        var change = message is null ? "" : changeOrMessage;
        const string rest = "source: iupac-1995, standing: published";
        var text =
            $"elements:\n  - {{ symbol: Cu, mass: 63.546, {rest} }}\ngroups: []\nsubstances:\n  - {substance}, {rest} }}\n"
            + $"openNames:\n  - {{ name: metal, {(change.StartsWith("mayBe", StringComparison.Ordinal) ? change : "mayBe: [Cu]")}, decides: which }}\n"
            + $"products:\n  - {{ key: own, name: own, {(change.StartsWith("parts", StringComparison.Ordinal) ? change : "parts: [\"Cu 60 % (50 to 70 %)\"]")}, {rest} }}\n";
        var problems = new List<InputProblem>();

        FactFile.ReadText(
            text,
            "own.yaml",
            problems,
            root => SubstanceFile.Read(root),
            ShippedData.Library.Words.Sources
        );

        Assert.Contains(message ?? changeOrMessage, Assert.Single(problems).ToString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("wall plate", "wall-plate")]
    [InlineData("wall plate", "Wall Plates")]
    [InlineData("björk", "bjørk")]
    public void Two_names_that_a_person_would_take_for_one_are_refused(string first, string second)
    {
        const string rest = "source: trade-practice, standing: common practice";
        string Names(string more) =>
            $"names:\n  - {{ name: {first}, {more}{rest} }}\n  - {{ name: {second}, {more}{rest} }}\n";
        var problems = new List<InputProblem>();

        var sources = ShippedData.Library.Words.Sources;
        FactFile.ReadText(
            Names("group: house, exposure: { groundContact: yes }, "),
            "own.yaml",
            problems,
            root => ComponentFile.ReadNames(root, []),
            sources
        );
        FactFile.ReadText(
            Names("decides: which, "),
            "own.yaml",
            problems,
            root => TimberNameFile.Read(root, []),
            sources
        );

        Assert.Equal(
            [(3, "name", second), (3, "name", second)],
            problems.Select(each => (each.Line, each.Field, each.Found))
        );
    }

    [Fact]
    public void All_mistakes_of_a_file_are_found_in_one_pass()
    {
        const string text = """
            title: Own table
            document: Own table
            edition: "1"
            penetration:
              - key: one
                require: NP9
                source: trade-practice
                standing: common practice
              - key: two
                require: { name: deep, depth: { least: 6 furlongs, in: sapwood } }
                standing: rumour
            """;
        var problems = new List<InputProblem>();
        FactFile.ReadText(
            text,
            "own.yaml",
            problems,
            root => RulebookFile.Read(root, "own", ShippedData.Library.Words),
            ShippedData.Library.Words.Sources
        );

        Assert.Equal([6, 9, 10, 11], problems.Select(problem => problem.Line));
    }

    [Fact]
    public void No_damage_to_a_file_brings_anything_but_problems()
    {
        var good = File.ReadAllText(Path.Combine(Repository.At("data"), "rulebooks", "spanish", "se-m.yaml"));
        var damage =
            from at in Gen.Int[0, good.Length - 1]
            from length in Gen.Int[0, 12]
            from put in Gen.String[Gen.Char["{}[]:-,&*!|>'\"%@`#?\t\n a1é"], 0, 6]
            select string.Concat(good.AsSpan(0, at), put, good.AsSpan(Math.Min(good.Length, at + length)));

        damage.Sample(
            text =>
            {
                var problems = new List<InputProblem>();
                FactFile.ReadText(
                    text,
                    "damaged.yaml",
                    problems,
                    root => RulebookFile.Read(root, "damaged", ShippedData.Library.Words),
                    ShippedData.Library.Words.Sources
                );
                Assert.All(problems, problem => Assert.NotEqual("", problem.Expected));
            },
            iter: 2000
        );
    }

    [Fact]
    public void A_file_nested_too_deeply_is_refused()
    {
        var text = new StringBuilder("title: ").Append('[', 5000).Append(']', 5000).ToString();
        var problems = new List<InputProblem>();
        FactFile.ReadText(text, "deep.yaml", problems, _ => { });
        Assert.Contains("nested too deeply", Assert.Single(problems).Found, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_of_a_few_bytes_cannot_unfold_into_billions()
    {
        const string bomb = """
            a: &a [x, x, x, x, x, x, x, x, x]
            b: &b [*a, *a, *a, *a, *a, *a, *a, *a, *a]
            c: [*b, *b, *b, *b, *b, *b, *b, *b, *b]
            """;
        var problems = new List<InputProblem>();
        FactFile.ReadText(bomb, "bomb.yaml", problems, _ => { });
        Assert.Contains("an anchor or a tag", Assert.Single(problems).Found, StringComparison.Ordinal);
    }

    [Fact]
    public void A_huge_file_is_refused_unread()
    {
        var problems = new List<InputProblem>();
        FactFile.ReadText(new string('x', 4_000_001), "huge.yaml", problems, _ => { });
        Assert.Contains("over 4 million characters", Assert.Single(problems).Found, StringComparison.Ordinal);
    }

    [Fact]
    public void A_missing_data_folder_is_refused_in_words()
    {
        var refused = Assert.Throws<InputRefusedException>(() => new FactLibrary("/nowhere/at/all").Species);
        Assert.Contains("no such file", refused.Message, StringComparison.Ordinal);
    }

    private static string Folder(string kind) =>
        Repository.At("tests", "Alburnum.Records.Tests", "Facts", "Broken", kind);

    private static string PathOf(string kind, string file) => Path.Combine(Folder(kind), file + ".yaml");

    private static string WordsOf(string path) => File.ReadLines(path).First()[Expected.Length..];

    private static TheoryData<string> FilesOf(string kind) =>
        [
            .. Directory
                .GetFiles(Folder(kind), "*.yaml")
                .Select(path => Path.GetFileNameWithoutExtension(path))
                .Order(StringComparer.Ordinal),
        ];
}
