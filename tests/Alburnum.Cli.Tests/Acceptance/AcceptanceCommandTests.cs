using System.Text.Json;
using Alburnum.Tests.Shared;

namespace Alburnum.Cli.Tests.Acceptance;

public sealed class AcceptanceCommandTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    private static async Task<string> Done(params string[] args)
    {
        var run = await AlburnumRun.Of(args);
        Assert.Equal(("", 0), (run.Errors, run.Status));
        return run.Output;
    }

    private static async Task<string> Refused(params string[] args)
    {
        var run = await AlburnumRun.Of(args);
        Assert.Equal(2, run.Status);
        Assert.Equal("", run.Output);
        return run.Errors;
    }

    [Theory]
    [InlineData("460", "0.851 kg/m³")]
    [InlineData("460", "460 kg/m³, as stated, without its uncertainty.")]
    [InlineData("460", "a retention that rests on it cannot be held against a demand.")]
    [InlineData("460 ± 20 (k=1)", "0.85 ± 0.05 kg/m³")]
    public async Task A_density_of_the_zone_is_taken_with_and_without_its_uncertainty(string density, string said) =>
        Assert.Contains(
            said,
            Flat(await Done("retention", "1850 ± 120 (k=2) mg/kg Cu", "--zone-density", density)),
            StringComparison.Ordinal
        );

    [Fact]
    public async Task A_sampling_sheet_says_what_to_cut_what_passes_and_both_readings()
    {
        var sheet = await Done("sample", "attributes", "--lot", "500", "--aql", "10", "--level", "II", "--seed", "7");

        Assert.Contains("Cut     50 of 500 pieces", sheet, StringComparison.Ordinal);
        Assert.Contains("at most 10 failures pass; 11 or more do not", sheet, StringComparison.Ordinal);
        Assert.Contains("MIL-STD-105E", sheet, StringComparison.Ordinal);
        Assert.Contains("seed 7", sheet, StringComparison.Ordinal);
        Assert.Contains("90 % of the pieces cut must pass", sheet, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_JSON_of_a_sheet_holds_the_same_numbers()
    {
        using var json = JsonDocument.Parse(
            await Done("sample", "attributes", "--lot", "1000", "--aql", "25", "--seed", "1", "--json")
        );
        var root = json.RootElement;

        Assert.Equal(50, root.GetProperty("positions").GetArrayLength());
        Assert.Equal(3, root.GetProperty("readings").GetArrayLength());
        Assert.Contains("arrow to H", root.GetProperty("plan").GetString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("share", "--must-pass", "75", "--cut", "8")]
    [InlineData("smallest", "--accept", "5", "--reject", "25")]
    [InlineData("double", "--accept", "5", "--reject", "25")]
    [InlineData("sequential", "--accept", "5", "--reject", "25")]
    [InlineData("variables", "--accept", "5", "--reject", "25")]
    [InlineData("show", "--conforming", "75", "--failures", "1")]
    public async Task Every_kind_of_plan_has_a_sheet_and_a_chart(string plan, params string[] options)
    {
        var chart = _folder.At("oc.svg");
        var sheet = await Done(["sample", plan, "--lot", "200", "--chart", chart, .. options]);

        Assert.Contains("Pieces to cut", sheet, StringComparison.Ordinal);
        Assert.StartsWith(
            "<svg",
            await File.ReadAllTextAsync(chart, TestContext.Current.CancellationToken),
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData(
        "--aql: found 11, expected an AQL of MIL-STD-105E: 0.01, 0.015",
        "attributes",
        "--lot",
        "500",
        "--aql",
        "11"
    )]
    [InlineData("--level: found IV, expected S-1", "attributes", "--lot", "500", "--aql", "10", "--level", "IV")]
    [InlineData("--lot: found nothing", "attributes", "--aql", "10")]
    [InlineData(
        "--cut: found 9, expected a whole number, 1 to 8 pieces",
        "share",
        "--must-pass",
        "75",
        "--cut",
        "9",
        "--lot",
        "8"
    )]
    [InlineData("--reject: found 4, expected more than --accept", "smallest", "--accept", "5", "--reject", "4")]
    [InlineData("Unknown command 'triple'", "triple")]
    public async Task Options_that_do_not_fit_are_refused_in_words(string said, params string[] options) =>
        Assert.Contains(said, await Refused(["sample", .. options]), StringComparison.Ordinal);

    [Fact]
    public async Task Counts_are_judged_by_the_rule_named_and_the_other_reading_is_said()
    {
        var output = await Done("judge", "counts", "--cut", "8", "--failures", "3", "--aql", "25", "--lot", "30");

        Assert.Contains("Rule used: plan indexed at AQL 25", output, StringComparison.Ordinal);
        Assert.Contains("Penetration rule met (plan indexed at AQL 25", Flat(output), StringComparison.Ordinal);
        Assert.Contains(
            "No share of the lot is wanted: the rule counts defects.",
            Flat(output),
            StringComparison.Ordinal
        );
        Assert.Contains("2 of 8 may fail: penetration rule not met", Flat(output), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Depths_are_judged_piece_by_piece_and_a_missing_assay_is_said()
    {
        var table = _folder.Write(
            "depths.csv",
            "piece,face,position_mm,depth_mm,u_mm,sapwood_mm\n"
                + string.Concat(
                    Enumerable.Range(1, 8).Select(piece => $"T{piece},1,50,9.5,0.3,30\nT{piece},2,50,8.9,0.3,30\n")
                )
        );
        string[] judge =
        [
            "judge",
            "table",
            table,
            "--rule",
            "NP3",
            "--section",
            "100 x 100 mm",
            "--must-pass",
            "75",
            "--lot",
            "60",
            "--retention",
            "12",
        ];

        Assert.Contains(
            "Penetration rule met; retention not judged",
            Flat(await Done(judge)),
            StringComparison.Ordinal
        );
        var assayed = await Done([.. judge, "--assay", "14.2 ± 0.8 (k=2)"]);
        Assert.Contains("Penetration rule met; retention met", Flat(assayed), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_batch_within_measuring_uncertainty_is_undecided_and_help_is_offered()
    {
        var table = _folder.Write(
            "depths.csv",
            "piece,face,position_mm,depth_mm,u_mm,sapwood_mm\n"
                + string.Concat(Enumerable.Range(1, 8).Select(piece => $"T{piece},1,50,6.1,0.5,30\n"))
        );
        var output = Flat(
            await Done(
                "judge",
                "table",
                table,
                "--rule",
                "6 mm sapwood",
                "--section",
                "round 120 mm",
                "--must-pass",
                "75"
            )
        );

        Assert.Contains("Penetration rule undecided", output, StringComparison.Ordinal);
        Assert.Contains("a second reading as good as the first would decide it", output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("more can fail", "--cut", "8", "--failures", "9", "--must-pass", "75")]
    [InlineData("at least the 8 pieces", "--cut", "8", "--failures", "0", "--must-pass", "75", "--lot", "5")]
    [InlineData("at most the 8 that the plan asks for", "--cut", "9", "--failures", "0", "--aql", "25", "--lot", "30")]
    [InlineData("both, expected one of the two", "--cut", "8", "--failures", "0", "--must-pass", "75", "--aql", "25")]
    [InlineData(
        "--assay: found about 14",
        "--cut",
        "8",
        "--failures",
        "0",
        "--must-pass",
        "75",
        "--retention",
        "12",
        "--assay",
        "about 14"
    )]
    [InlineData("--cut: found nothing", "--must-pass", "75")]
    public async Task Batches_that_cannot_be_judged_are_refused_in_words(string said, params string[] options) =>
        Assert.Contains(said, await Refused(["judge", "counts", .. options]), StringComparison.Ordinal);

    [Theory]
    [InlineData("6 fathoms")]
    [InlineData("NP9")]
    [InlineData("120 % sapwood")]
    public async Task Depth_rules_that_are_none_are_refused(string rule)
    {
        var table = _folder.Write("depths.csv", "piece,face,position_mm,depth_mm,u_mm\nT1,1,50,9,0.3\n");

        Assert.Contains(
            "--rule",
            await Refused("judge", "table", table, "--rule", rule, "--section", "100x100", "--must-pass", "75"),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task A_history_says_its_signals_in_words_and_draws_them()
    {
        var charges = string.Concat(
            Enumerable
                .Range(1, 60)
                .Select(i => $"C{i},{(i % 2 == 0 ? 9.4 : 8.6) - (i > 40 ? 0.1 * (i - 40) : 0):0.##},{12 + i % 3}\n")
        );
        var table = _folder.Write("charges.csv", "charge,mean_depth_mm,retention_kg_per_m3\n" + charges);
        var output = Flat(await Done("history", "charges", table, "--depth", "7", "--chart", _folder.At("charts")));

        Assert.Contains("60 charges, oldest first", output, StringComparison.Ordinal);
        Assert.Contains("mean depth has shifted down", output, StringComparison.Ordinal);
        Assert.Contains("one false signal in about 500 charges", output, StringComparison.Ordinal);
        Assert.True(File.Exists(Path.Combine(_folder.Path, "charts", "mean-depth.svg")));
    }

    [Fact]
    public async Task A_history_with_a_charge_twice_is_refused_and_nothing_is_drawn()
    {
        var table = _folder.Write("charges.csv", "charge,mean_depth_mm\nC1,9\nC1,8\n");
        var charts = _folder.At("charts");

        Assert.Contains(
            "line 3, field charge: found \"C1\", already on line 2",
            await Refused("history", "charges", table, "--chart", charts),
            StringComparison.Ordinal
        );
        Assert.False(Directory.Exists(charts));
    }

    [Fact]
    public async Task Risks_of_a_wrong_verdict_are_said_and_what_a_better_reading_would_do()
    {
        string[] judge =
        [
            "judge",
            "table",
            _folder.Write(
                "depths.csv",
                "piece,face,position_mm,depth_mm,u_mm,sapwood_mm\n"
                    + string.Concat(Enumerable.Range(1, 8).Select(i => $"T{i},1,50,{5.6 + 0.3 * i:0.0},0.4,30\n"))
            ),
            "--rule",
            "6 mm sapwood",
            "--section",
            "round 120 mm",
            "--must-pass",
            "75",
            "--lot",
            "60",
        ];
        var output = Flat(await Done(judge));

        Assert.Contains("consumer's risk", output, StringComparison.Ordinal);
        Assert.Contains("With half the reading uncertainty (a better photograph)", output, StringComparison.Ordinal);
        Assert.Contains("The bound on the conforming share reaches 75 % with", output, StringComparison.Ordinal);

        using var json = JsonDocument.Parse(await Done([.. judge, "--json"]));
        var risks = json.RootElement.GetProperty("risks");
        Assert.InRange(risks.GetProperty("now").GetProperty("consumer").GetDouble(), 1e-4, 0.05);
        Assert.True(
            risks.GetProperty("with_half_the_uncertainty").GetProperty("left_open").GetDouble()
                < risks.GetProperty("now").GetProperty("left_open").GetDouble()
        );
        Assert.Equal(-0.1, json.RootElement.GetProperty("pieces")[0].GetProperty("margin_mm").GetDouble(), 1e-9);
    }

    [Fact]
    public async Task Retentions_by_piece_are_judged_by_variables()
    {
        var table = _folder.Write(
            "assays.csv",
            "piece,retention_kg_per_m3\nT1,13.1\nT2,14.6\nT3,12.4\nT4,15.8\nT5,13.9\nT6,14.2\nT7,12.9\nT8,13.6\n"
        );
        string[] judge = ["judge", "values", table, "--conforming", "75", "--lot", "60", "--retention"];

        var output = Flat(await Done([.. judge, "11"]));
        Assert.Contains("at least 75 % of all pieces must reach 11 kg/m³", output, StringComparison.Ordinal);
        Assert.Contains("close to log-normal", output, StringComparison.Ordinal);
        Assert.Contains("Rule met by retention; ", output, StringComparison.Ordinal);
        Assert.Contains("Undecided by retention", await Done([.. judge, "13"]), StringComparison.Ordinal);
        Assert.Contains("Rule not met by retention", await Done([.. judge, "15"]), StringComparison.Ordinal);

        using var json = JsonDocument.Parse(await Done([.. judge, "11", "--json"]));
        Assert.True(json.RootElement.GetProperty("is_exact").GetBoolean());
        Assert.InRange(json.RootElement.GetProperty("lower_limit").GetDouble(), 11, 13);
    }

    [Theory]
    [InlineData("--conforming: found nothing", "--retention", "11")]
    [InlineData("--retention: found nothing", "--conforming", "75")]
    [InlineData("Unknown option 'must-pass'", "--retention", "11", "--conforming", "75", "--must-pass", "75")]
    [InlineData("--depth: found a value", "--depth", "6", "--conforming", "75")]
    [InlineData("--population: found square", "--retention", "11", "--conforming", "75", "--population", "square")]
    [InlineData("at least the 2 pieces", "--retention", "11", "--conforming", "75", "--lot", "1")]
    [InlineData("50.1 to 99.99 %", "--retention", "11", "--conforming", "100")]
    public async Task Options_that_do_not_go_with_values_are_refused(string said, params string[] options)
    {
        var table = _folder.Write("assays.csv", "piece,retention_kg_per_m3\nT1,13.1\nT2,14.6\n");

        Assert.Contains(said, await Refused(["judge", "values", table, .. options]), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Options_by_variables_do_not_go_with_counts() =>
        Assert.Contains(
            "Unknown option 'conforming'",
            await Refused(
                "judge",
                "counts",
                "--cut",
                "8",
                "--failures",
                "0",
                "--must-pass",
                "75",
                "--conforming",
                "75"
            ),
            StringComparison.Ordinal
        );

    [Theory]
    [InlineData(4.5, "Penetration rule not met; retention not judged")]
    [InlineData(9.0, "Penetration rule met; retention not judged")]
    public async Task A_case_folder_gets_the_verdict_and_the_reasons_of_its_batch(double depthMm, string verdict)
    {
        _folder.Write(
            "case.yaml",
            $"""
            reference: T-1
            title: Test posts
            client: Thornhollow estate
            sectionsCut: 2026-05-12
            rulebook: european-2007
            component: fence post
            section: 100 x 100 mm
            species: Scots pine
            useClass: 4
            statedClass: NP3
            serviceLife: 15 years
            batch:
              pieces: 60
              mustPass: 75 %
            rulerReadings: readings.csv
            """
        );
        _folder.Write(
            "readings.csv",
            "piece,face,position_mm,depth_mm,u_mm,sapwood_mm\n"
                + string.Concat(
                    Enumerable
                        .Range(1, 6)
                        .SelectMany(piece =>
                            Enumerable.Range(1, 4).Select(face => $"T{piece},{face},50,{depthMm:0.0},0.3,25\n")
                        )
                )
        );
        var output = await Done("judge", "case", _folder.Path);

        Assert.Contains(verdict, output, StringComparison.Ordinal);
        Assert.Contains("Rule used: 75 % of the pieces cut must pass", output, StringComparison.Ordinal);
        Assert.Contains("6 pieces cut", output, StringComparison.Ordinal);
        Assert.Contains("Retention is not judged", Flat(output), StringComparison.Ordinal);
        Assert.Equal(["case.yaml", "readings.csv"], Directory.GetFiles(_folder.Path).Select(Path.GetFileName).Order());
    }

    [Theory]
    [InlineData("8", "2")]
    [InlineData("3", "0")]
    public async Task Few_pieces_of_a_large_lot_never_print_a_verdict_that_is_stronger_than_its_lines(
        string cut,
        string failures
    )
    {
        string[] judge = ["judge", "counts", "--cut", cut, "--failures", failures, "--must-pass", "75", "--lot", "400"];
        var output = Flat(await Done(judge));

        Assert.DoesNotContain("over 99.9 %", output, StringComparison.Ordinal);
        Assert.Contains("the batch itself not shown to conform: at least", output, StringComparison.Ordinal);
        using var json = JsonDocument.Parse(await Done([.. judge, "--json"]));
        var findings = json.RootElement.GetProperty("findings");
        Assert.Equal("undecided", findings.GetProperty("weakest").GetString());
        Assert.Equal("met", findings.GetProperty("rule").GetProperty("verdict").GetString());
        Assert.Equal(JsonValueKind.Null, findings.GetProperty("rule").GetProperty("probability").ValueKind);
    }

    [Fact]
    public async Task An_assay_below_detection_is_never_told_as_a_mean()
    {
        var output = Flat(
            await Done(
                "judge",
                "counts",
                "--cut",
                "8",
                "--failures",
                "0",
                "--must-pass",
                "75",
                "--retention",
                "12",
                "--assay",
                "< 0.5"
            )
        );

        Assert.Contains("the assay is below 0.5 kg/m³, where 12 kg/m³ is required", output, StringComparison.Ordinal);
        Assert.DoesNotContain("the mean of", output, StringComparison.Ordinal);
        Assert.Contains("retention not met", output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_share_that_was_typed_is_echoed_as_typed() =>
        Assert.Contains(
            "99.99 %",
            await Done("sample", "show", "--conforming", "99.99", "--failures", "0", "--lot", "200"),
            StringComparison.Ordinal
        );

    [Fact]
    public async Task A_british_case_whose_contract_names_a_deeper_class_is_judged_by_it_and_by_the_code()
    {
        _folder.Write(
            "case.yaml",
            """
            reference: T-2
            title: Test posts
            client: Thornhollow estate
            sectionsCut: 2026-05-12
            rulebook: british-2014
            component: fence post
            section: 100 x 100 mm
            species: Sitka spruce
            incised: yes
            useClass: 4
            statedClass: NP5
            serviceLife: 15 years
            batch:
              pieces: 60
              mustPass: 75 %
            rulerReadings: readings.csv
            """
        );
        _folder.Write(
            "readings.csv",
            "piece,face,position_mm,depth_mm,u_mm,sapwood_mm\n"
                + string.Concat(
                    Enumerable
                        .Range(1, 6)
                        .SelectMany(piece => Enumerable.Range(1, 4).Select(face => $"T{piece},{face},50,9.0,0.3,25\n"))
                )
        );
        var output = Flat(await Done("judge", "case", _folder.Path));

        Assert.Contains(
            "Penetration: rule not met with the contract's NP5, rule met with the code's NP3",
            output,
            StringComparison.Ordinal
        );
        Assert.Contains("asks for more than the code's NP3: it decides.", output, StringComparison.Ordinal);
        Assert.Contains("Moisture before treatment is not stated", output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Nothing_may_stand_beside_a_case() =>
        Assert.Contains(
            "Unknown option 'must-pass'",
            await Refused("judge", "case", "anything", "--must-pass", "75"),
            StringComparison.Ordinal
        );

    [Fact]
    public async Task The_share_that_must_pass_is_drawn_beside_the_plan_indexed_at_the_same_figure()
    {
        var sheet = Flat(await Done("sample", "share", "--must-pass", "75", "--cut", "8", "--lot", "30"));

        Assert.Contains("is also read as the plan indexed at AQL 25", sheet, StringComparison.Ordinal);
        Assert.Contains("cuts 8 pieces and lets 5 fail", sheet, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_plan_that_may_stop_early_says_how_much_it_cuts_on_average() =>
        Assert.Contains(
            "Pieces cut",
            await Done("sample", "sequential", "--accept", "5", "--reject", "25", "--lot", "200"),
            StringComparison.Ordinal
        );

    [Fact]
    public async Task Lots_are_followed_through_the_switching_rules()
    {
        var table = _folder.Write(
            "lots.csv",
            "lot,pieces,cut,failures\nL1,500,50,11\nL2,500,50,4\nL3,500,50,12\nL4,500,50,6\n"
        );
        var output = Flat(await Done("history", "lots", table, "--aql", "10"));

        Assert.Contains("MIL-STD-105E", output, StringComparison.Ordinal);
        Assert.Contains(
            "2 of 4 lots accepted. The next lot is under tightened inspection.",
            output,
            StringComparison.Ordinal
        );
        Assert.Contains("switching rules from memory", output, StringComparison.Ordinal);

        using var json = JsonDocument.Parse(await Done("history", "lots", table, "--aql", "10", "--json"));
        Assert.Equal("tightened", json.RootElement.GetProperty("lots")[3].GetProperty("severity").GetString());
        Assert.Contains("--aql: found nothing", await Refused("history", "lots", table), StringComparison.Ordinal);
        Assert.Contains(
            "Unknown option 'chart'",
            await Refused("history", "lots", table, "--chart", "x"),
            StringComparison.Ordinal
        );
    }

    /// <summary>The output without its line breaks.</summary>
    private static string Flat(string output) =>
        string.Join(' ', output.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
}
