using System.Reflection;
using System.Text;
using Alburnum.Tests.Shared;

namespace Alburnum.OutsideChecks;

public sealed class ListOfOutsideChecks
{
    [Fact]
    public void Every_check_names_its_source()
    {
        Assert.NotEmpty(Checks());
        Assert.All(Checks(), check => Assert.True(Sources(check).Any(), $"{check.DeclaringType}.{check.Name}"));
    }

    [Fact]
    public void The_list_in_the_docs_is_the_list_in_the_code()
    {
        var list = Page();
        if (Environment.GetEnvironmentVariable("ALBURNUM_WRITE_OUTSIDE_CHECKS") is { Length: > 0 } path)
            File.WriteAllText(path, list);

        Assert.Equal(File.ReadAllText(Repository.At("docs", "outside-checks.md")), list);
    }

    [Fact]
    public void Every_check_is_of_one_kind() =>
        Assert.All(Checks(), check => Assert.True(KindOf(check) is not null, $"{check.DeclaringType}.{check.Name}"));

    [Fact]
    public void No_check_rests_on_memory_alone_unless_the_program_works_the_number_out() =>
        Assert.All(
            Checks().Where(check => KindOf(check) != CheckKind.Computed),
            check =>
                Assert.True(
                    Sources(check).Any(source => source is not FromMemoryAttribute),
                    $"{check.DeclaringType}.{check.Name}: memory held against memory"
                )
        );

    [Theory]
    [InlineData("EN 350-2", "EN 350, 2016", true)]
    [InlineData("EN 350-2", "EN 351-1, 1995", false)]
    [InlineData("Tropical timber data sheets, EN 350 classes", "EN 350-2, 1994", true)]
    [InlineData("BS 8417", "NEN 5461", false)]
    [InlineData("Wood species notes", "a second book of notes", false)]
    public void Two_copies_of_one_standard_are_no_two_sources(string document, string second, bool isCopy)
    {
        var row = new Provenance(Standing.Published, document, "1994", "species table", "");
        Assert.Equal(isCopy, SecondSource.StandardsRepeated(row, [new PublishedAttribute(second, "")]).Any());
    }

    private static IEnumerable<MethodInfo> Checks() =>
        typeof(ListOfOutsideChecks)
            .Assembly.GetTypes()
            .Where(type => type != typeof(ListOfOutsideChecks))
            .SelectMany(type => type.GetMethods())
            .Where(method => method.GetCustomAttributes<FactAttribute>().Any());

    private static IEnumerable<OutsideSourceAttribute> Sources(MethodInfo check) =>
        check
            .GetCustomAttributes<OutsideSourceAttribute>()
            .Concat(check.DeclaringType!.GetCustomAttributes<OutsideSourceAttribute>());

    private static CheckKind? KindOf(MethodInfo check) =>
        (
            check.GetCustomAttribute<CheckKindAttribute>()
            ?? check.DeclaringType!.GetCustomAttribute<CheckKindAttribute>()
        )?.Kind;

    /// <summary>How many cases a check runs: one, or as many as its theory has rows.</summary>
    private static int Cases(MethodInfo check)
    {
        var rows =
            check.GetCustomAttributes<InlineDataAttribute>().Count()
            + check
                .GetCustomAttributes<MemberDataAttribute>()
                .Sum(data =>
                    ((System.Collections.IEnumerable)check.DeclaringType!.GetProperty(data.MemberName)!.GetValue(null)!)
                        .Cast<object>()
                        .Count()
                );
        return Math.Max(1, rows);
    }

    private static string InWords(CheckKind kind) =>
        kind switch
        {
            CheckKind.Computed => "computed",
            CheckKind.SecondSource => "second source",
            CheckKind.Transcription => "transcription",
            CheckKind.Calibration => "calibration",
            _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Not a kind."),
        };

    private static string Page()
    {
        var page = new StringBuilder();
        page.Append("# Outside checks\n\n");
        page.Append(
            "Each row is a test in `tests/Alburnum.OutsideChecks` that holds the program against something outside it.\n"
        );
        page.Append(
            "Written by `./test --write-outside-checks` from the attributes beside the checks; do not edit by hand.\n"
        );
        page.Append("\n| kind | what is held against what | cases |\n|---|---|---|\n");
        foreach (
            var (kind, what) in new[]
            {
                (CheckKind.Computed, "what the program works out, against a published or an independent result"),
                (
                    CheckKind.SecondSource,
                    "a fact, against a publication with an authority of its own: another standard, another country's code, "
                        + "a research paper, a public handbook, a body's own list or a trade's own figure"
                ),
                (
                    CheckKind.Transcription,
                    "a row, against its own source or against another copy of the standard that it repeats"
                ),
                (CheckKind.Calibration, "a model, against the facts that its numbers were chosen by: confirms nothing"),
            }
        )
            page.Append(
                $"| {InWords(kind)} | {what} | {Checks().Where(check => KindOf(check) == kind).Sum(Cases)} |\n"
            );
        page.Append("\nA case is one row of a check that has several. A case may hold many numbers.\n");
        foreach (
            var room in Checks().GroupBy(Room, StringComparer.Ordinal).OrderBy(room => room.Key, StringComparer.Ordinal)
        )
        {
            page.Append($"\n## {room.Key}\n\n| check | kind | cases | standing | source |\n|---|---|---|---|---|\n");
            foreach (var check in room.OrderBy(Sentence, StringComparer.Ordinal))
            {
                foreach (var source in Sources(check))
                {
                    var where = string.Join(
                        ", ",
                        new[] { source.Document, source.Place }.Where(part => part.Length > 0)
                    );
                    page.Append(
                        $"| {Sentence(check)} | {InWords(KindOf(check)!.Value)} | {Cases(check)} | {source.Standing} | {where} |\n"
                    );
                }
            }
        }
        return page.ToString();
    }

    private static string Room(MethodInfo check) => check.DeclaringType!.Namespace!.Split('.')[^1];

    private static string Sentence(MethodInfo check) => check.Name.Replace('_', ' ');
}
