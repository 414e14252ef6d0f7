using Alburnum.Records.Tables;
using Alburnum.Tests.Shared;
using Alburnum.Timber;

namespace Alburnum.Records.Tests.Tables;

public sealed class PlantTableTests : IDisposable
{
    private const string Tank = "charge,at_minutes,tank_l,timber_m3\n";
    private const string Zones = "charge,from_mm,to_mm,retention_kg_per_m3\n";

    // Two photographs as measure writes them, one of which could not be read.
    private const string Readings = """
        [
          {
            "file": "cut/P01.jpg", "shape": "rectangle", "section_mm": [100, 50],
            "faces": [
              {
                "number": 2, "positions_mm": [1, 2, 3, 4], "depth_mm": [4, 5, 19.5, 7], "excluded": [false, true, false, false],
                "sapwood_mm": [20, 20, 20, 0]
              }
            ],
            "heartwood": { "border_u_mm": 0.9 }
          },
          { "file": "cut/P02.jpg", "shape": "rectangle", "section_mm": [100, 50], "faces": [], "heartwood": null }
        ]
        """;

    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    private IReadOnlyList<PlantRow> Rows(string text) => PlantTable.Read(_folder.Write("own.csv", text)).Rows;

    private string Refusal(string text) => Assert.Throws<InputRefusedException>(() => Rows(text)).Message;

    [Fact]
    public void Places_of_one_section_stand_by_face_and_position()
    {
        var rows = Rows("charge,piece,face,position_mm,depth_mm\n7,a,2,35,4.5\n7,a,,40,4.6\n7,b,,,5\n");

        Assert.Equal([(2, 35.0), (1, 40.0), null], rows.Select(row => row.Place));
        Assert.Contains(
            "own.csv, line 2, field position_mm: found nothing, expected where along the face",
            Refusal("charge,piece,face,position_mm,depth_mm\n7,a,2,,4.5\n"),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Dates_stand_from_the_oldest_on_and_are_written_one_way()
    {
        Assert.Equal(2, Rows("charge,date,piece,depth_mm\n7,2026-05-12,a,4\n8,2026-05-12 07:30:00,a,4\n").Count);
        Assert.Contains(
            "own.csv, line 4, field date: found 2026-05-11, expected no day before that of line 2: the oldest stands first",
            Refusal("charge,date,piece,depth_mm\n7,2026-05-12,a,4\n8,,a,4\n9,2026-05-11,a,4\n"),
            StringComparison.Ordinal
        );
        var upsideDown = Refusal("charge,date,piece,depth_mm\n9,2026-05-12,a,4\n8,2026-05-11,a,4\n7,2026-05-10,a,4\n");
        Assert.Single(upsideDown.Split("the oldest stands first")[..^1]);
        Assert.Contains(
            "own.csv, line 2, field date: found \"01/02/2026\", expected a date such as 2026-05-12",
            Refusal("charge,date,piece,depth_mm\n7,01/02/2026,a,4\n"),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void A_measured_section_is_read_from_what_measure_wrote()
    {
        _folder.Write("readings.json", Readings);
        var rows = Rows("charge,readings,uptake_l_per_m3\n7,readings.json,140\n");

        Assert.Equal([null, 4.0, 20.0, 7.0], rows.Select(row => row.DepthMm));
        Assert.Equal([140.0, null, null, null], rows.Select(row => row.UptakeLPerM3));
        // As deep as the border can be told the sapwood is filled; where heartwood lies at the face, the depth is in it.
        Assert.Equal([20.0, 20.0, null], rows.Skip(1).Select(row => row.WayMm));
        Assert.Equal([false, false, true], rows.Skip(1).Select(row => row.IsHeartwood));
        Assert.Equal([(2, 1.0), (2, 3.0), (2, 4.0)], rows.Skip(1).Select(row => row.Place));
        Assert.All(rows.Skip(1), row => Assert.Equal(new RectangularSection(100, 50), row.Section));
    }

    [Fact]
    public void A_case_s_report_is_read_piece_by_piece()
    {
        var report =
            $$"""{ "pieces": [{ "piece": "west", "reading": {{Readings.Trim().TrimStart('[').Split("},\n  { \"file\"")[0]}}} }] }""";
        _folder.Write("report.json", report);

        Assert.Equal(3, Rows("charge,piece,readings\n7,west,report.json\n").Count(row => row.DepthMm is not null));
        Assert.Contains(
            "field piece: found \"east\", expected one of report.json: west",
            Refusal("charge,piece,readings\n7,east,report.json\n"),
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData("[", "line 1: found something that is not JSON")]
    [InlineData("{}", "found JSON of something else")]
    [InlineData("[{ \"file\": 3 }]", "found JSON of something else")]
    [InlineData("[]", "found no section on which a depth was read")]
    public void What_measure_never_wrote_is_refused(string text, string found)
    {
        _folder.Write("readings.json", text);

        Assert.Contains(found, Refusal("charge,readings\n7,readings.json\n"), StringComparison.Ordinal);
    }

    [Fact]
    public void Readings_that_are_not_there_are_refused_by_their_name() =>
        Assert.Contains(
            "gone.json: found no such file",
            Refusal("charge,readings\n7,gone.json\n"),
            StringComparison.Ordinal
        );

    [Fact]
    public void The_tank_s_readings_carry_the_usual_uncertainty_where_none_is_stated()
    {
        var rows = Rows("charge,at_minutes,tank_l,timber_m3,tank_uncertainty_l\n7,60,9000,6,\n7,90,8500,6,5\n");

        Assert.Equal([new TankRow(60, 9000, 10, 6), new TankRow(90, 8500, 5, 6)], rows.Select(row => row.Tank));
    }

    [Theory]
    [InlineData("7,60,9000,6\n", "line 2, field tank_l: found one reading of charge 7, expected two or more")]
    [InlineData("7,60,9000,6\n7,60,8000,6\n", "line 3, field at_minutes: found \"60\", already on line 2")]
    [InlineData("7,60,9000,6\n7,70,8000,5\n", "line 3, field timber_m3: found \"5\", expected 6, as on line 2")]
    [InlineData(
        "7,60,9000,\n7,70,8000,6\n",
        "line 2, field timber_m3: found nothing, expected at_minutes, tank_l, timber_m3 together"
    )]
    [InlineData(
        "7,60,20000,5\n7,70,12000,5\n",
        "line 3, field tank_l: found \"12000\", expected within 5000 L, the volume of the timber, of line 2"
    )]
    public void Readings_of_the_tank_that_tell_nothing_or_cannot_be_are_refused(string rows, string message) =>
        Assert.Contains(message, Refusal(Tank + rows), StringComparison.Ordinal);

    [Theory]
    [InlineData("7,5,5,3\n", "field to_mm: found \"5\", expected more than from_mm")]
    [InlineData("7,5,,3\n", "field to_mm: found nothing, expected from_mm, to_mm, retention_kg_per_m3 together")]
    [InlineData("7,0,5,-1\n", "field retention_kg_per_m3: found \"-1\", expected 0 to 1000 kg/m³")]
    public void Zones_that_cannot_be_are_refused(string rows, string message) =>
        Assert.Contains(message, Refusal(Zones + rows), StringComparison.Ordinal);

    [Fact]
    public void A_line_that_says_nothing_is_refused() =>
        Assert.Contains(
            "line 2, field depth_mm: found nothing, expected a depth with its piece, readings of measured sections",
            Refusal("charge,piece,depth_mm\n7,a,\n"),
            StringComparison.Ordinal
        );
}
