using System.Text;
using Alburnum.Facts;
using Alburnum.Records.Charges;
using Alburnum.Records.Tests.Facts;
using Alburnum.Tests.Shared;

namespace Alburnum.Records.Tests.Charges;

public sealed class ChargeFileTests : IDisposable
{
    private const string Start = "do not edit by hand -->\n";
    private const string End = "<!-- end -->";
    private const string Whole = """
        name: posts
        species: Scots pine
        moisture: 26
        depthMm: 20
        retentionKgPerM3: 6
        solutionDensityKgPerM3: 1005
        pieces:
          - { section: 75x75, lengthMm: 1800, count: 200 }
          - { section: round 100, lengthMm: 2000, count: 10 }
        readings:
          tankBeforeL: 9000
          tankAfterL: 8060
          strengthBeforePercent: 2.0
        """;

    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    private ChargeOrder Read(string text) => ChargeFile.Read(_folder.Write("charge.yaml", text), ShippedData.Library);

    [Fact]
    public void What_is_left_out_is_what_the_docs_say()
    {
        var order = Read(Whole);

        Assert.Equal(
            ("full cell", null, 20, 0.65),
            (order.Treatment.Schedule, order.Treatment.Incising, order.DryingCelsius, order.DryingHumidity)
        );
        Assert.Equal(10, order.Readings!.TankStandardUncertaintyL);
        Assert.Null(order.MoistureLimitPercent);
    }

    [Fact]
    public void Volume_and_surface_are_those_of_all_pieces()
    {
        var order = Read(Whole);

        Assert.Equal(0.075 * 0.075 * 360 + Math.PI * 0.05 * 0.05 * 20, order.VolumeM3, 1e-9);
        Assert.Equal(0.3 * 360 + Math.PI * 0.1 * 20, order.SurfaceM2, 1e-9);
        Assert.Equal(order.VolumeM3, order.Readings!.VolumeM3);
    }

    [Theory]
    [InlineData("moisture: 26", "moisture: 260", 3, "moisture", "0 to 250 %")]
    [InlineData("depthMm: 20", "depthMm: deep", 4, "depthMm", "0.1 to 1000 mm")]
    [InlineData("section: 75x75", "section: big", 8, "section", "a size such as")]
    [InlineData("count: 200", "count: 2.5", 8, "count", "a whole number, 1 to 100000000 pieces")]
    [InlineData("name: posts", "name: posts\nschedule: empty sell", 2, "schedule", "full cell")]
    [InlineData("name: posts", "name: posts\nincising: rough", 2, "incising", "light")]
    [InlineData("name: posts", "name: posts\nposition: middle", 2, "position", "boxed, halved, quartered or side")]
    [InlineData("tankAfterL: 8060", "tankAfterL: 9060", 12, "tankAfterL", "at most the 9000 L before")]
    public void What_cannot_be_is_refused_with_its_line(string was, string now, int line, string field, string expected)
    {
        var refused = Assert.Throws<InputRefusedException>(() =>
            Read(Whole.Replace(was, now, StringComparison.Ordinal))
        );

        var problem = Assert.Single(refused.Problems);
        Assert.Equal((_folder.At("charge.yaml"), line, field), (problem.File, problem.Line, problem.Field));
        Assert.Contains(expected, problem.Expected, StringComparison.Ordinal);
    }

    [Fact]
    public void What_must_be_there_is_asked_for_all_at_once()
    {
        var refused = Assert.Throws<InputRefusedException>(() => Read("pieces: []\n"));

        Assert.Equal(
            ["depthMm", "moisture", "name", "pieces", "retentionKgPerM3", "solutionDensityKgPerM3", "species"],
            refused.Problems.Select(problem => problem.Field).Order(StringComparer.Ordinal)
        );
    }

    [Theory]
    [InlineData("plan-a-charge.md")]
    [InlineData("write-a-case.md")]
    public void The_table_in_the_docs_is_the_list_in_the_code(string name)
    {
        var path = Repository.At("docs", "how-to", name);
        var page = File.ReadAllText(path);
        var from = page.IndexOf(Start, StringComparison.Ordinal) + Start.Length;
        var to = page.IndexOf(End, StringComparison.Ordinal);
        if (Environment.GetEnvironmentVariable("ALBURNUM_WRITE_CHARGE_FIELDS") is { Length: > 0 })
            File.WriteAllText(path, page[..from] + DocsTable(name) + page[to..]);

        Assert.Equal(DocsTable(name), page[from..to]);
    }

    private static string DocsTable(string page)
    {
        var table = new StringBuilder();
        foreach (var (title, fields) in Parts(page))
        {
            table.Append($"| {title} | what it is | may be | for instance | if left out |\n|---|---|---|---|---|\n");
            foreach (var field in fields)
                table.Append(
                    $"| `{field.Key}` | {field.Help} | {field.Expected} | {field.Examples} | {field.LeftOut} |\n"
                );
            table.Append('\n');
        }
        return table.ToString();
    }

    private static IEnumerable<(string Title, IReadOnlyList<AskedField> Fields)> Parts(string page) =>
        page == "write-a-case.md"
            ?
            [
                ("under `prediction`", ChargeFields.OfCasePrediction),
                ("under `charge`", ChargeFields.OfCaseCharge),
                ("in each row of `pieces` under `charge`", ChargeFields.OfCasePieces),
                ("in `readings` under `charge`", ChargeFields.OfReadings),
            ]
            :
            [
                ("field", ChargeFields.OfCharge),
                ("in each row of `pieces`", ChargeFields.OfPieces),
                ("in `readings`", ChargeFields.OfReadings),
            ];
}
