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
        foreach (
            var room in Checks().GroupBy(Room, StringComparer.Ordinal).OrderBy(room => room.Key, StringComparer.Ordinal)
        )
        {
            page.Append($"\n## {room.Key}\n\n| check | standing | source |\n|---|---|---|\n");
            foreach (var check in room.OrderBy(Sentence, StringComparer.Ordinal))
            {
                foreach (var source in Sources(check))
                {
                    var where = string.Join(
                        ", ",
                        new[] { source.Document, source.Place }.Where(part => part.Length > 0)
                    );
                    page.Append($"| {Sentence(check)} | {source.Standing} | {where} |\n");
                }
            }
        }
        return page.ToString();
    }

    private static string Room(MethodInfo check) => check.DeclaringType!.Namespace!.Split('.')[^1];

    private static string Sentence(MethodInfo check) => check.Name.Replace('_', ' ');
}
