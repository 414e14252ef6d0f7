using Alburnum.Acceptance;
using Alburnum.Records.CaseFolders;
using Alburnum.Records.Facts;
using Alburnum.Records.Marks;
using Alburnum.Records.Store;
using Alburnum.Requirements;
using Alburnum.Tests.Shared;
using Alburnum.Timber;

namespace Alburnum.Records.Tests.CaseFolders;

public sealed class CaseFolderReaderTests : IDisposable
{
    private const string Whole = """
        reference: T-1
        title: Posts
        client: Thornhollow estate
        sectionsCut: 2026-05-12
        rulebook: european-2007
        component: fence post
        section: 100 x 100 mm
        species: Scots pine
        useClass: 4
        serviceLife: 15 years
        statedClass: NP3
        statedRetention: 8 kg/m3
        batch: { pieces: 50, mustPass: 75 % }
        assays: assays.csv
        rulerReadings: readings.csv
        pieces:
          - { piece: P01, photograph: P01.jpg, outline: ["10, 10", "90, 10", "90, 90", "10, 90"] }
        """;

    private static readonly FactLibrary Facts = new FactLibrary(Repository.At("data"));
    private readonly TemporaryFolder _folder = new();

    public CaseFolderReaderTests()
    {
        _folder.Write("P01.jpg", "bytes of a photograph");
        _folder.Write("assays.csv", "sample,retention_kg_per_m3,u_kg_per_m3\ncomposite,8.9,0.3\n");
        _folder.Write("readings.csv", "piece,face,position_mm,depth_mm,u_mm\nP02,1,20,7.5,0.5\nP02,3,60,8,0.5\n");
    }

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void A_whole_case_is_read_with_its_photographs_and_tables()
    {
        var read = Read(Whole);

        Assert.Equal("T-1", read.Case.Reference);
        Assert.Equal(new RectangularSection(100, 100), read.Case.Enquiry.Section);
        Assert.Equal([UseClass.Four], read.Case.Enquiry.UseClasses);
        Assert.Equal(15, read.Case.Enquiry.Life!.Value.Years);
        Assert.Equal((50, new ShareMustPass(0.75)), (read.Case.BatchSize, read.Case.Acceptance));
        Assert.Equal(8, read.Case.StatedRetentionKgPerM3);
        var assay = Assert.IsType<MeasuredAssay>(Assert.Single(read.Case.Assays));
        Assert.Equal(new Estimate(8.9, 0.3), assay.KgPerM3);
        var photograph = Assert.Single(read.Photographs);
        Assert.Equal(new MarkedPoint(90, 10), photograph.Marks.Corners![1]);
        Assert.Equal(["case.yaml", "readings.csv", "assays.csv"], read.Files.Select(file => file.FileName));
        var ruler = Assert.Single(read.RulerReadings);
        Assert.Equal(("P02", 7.5), (ruler.Piece, ruler.Profile!.Statistics.MinimumMm.Value));
    }

    [Theory]
    [InlineData("section: 100 x 100 mm", "section: 0 x 100 mm", "field section", "found 0 x 100 mm", "1 to 2000 mm")]
    [InlineData("section: 100 x 100 mm", "section: -5 x 100 mm", "field section", "found -5 x 100 mm", "1 to 2000 mm")]
    [InlineData("species: Scots pine", "species: Scots pinne", "field species", "Scots pinne", "did you mean")]
    [InlineData("useClass: 4", "useClass: 7", "field useClass", "found 7", "1, 2, 3, 3c, 3u, 3.1, 3.2, 4 or 5")]
    [InlineData("useClass: 4", "useClas: 4", "field useClas", "an unknown field", "useClass")]
    [InlineData("sectionsCut: 2026-05-12", "sectionsCut: yesterday", "field sectionsCut", "yesterday", "2026-05-12")]
    [InlineData("rulebook: european-2007", "rulebook: martian", "field rulebook", "martian", "european-2007")]
    [InlineData(
        "rulebook: european-2007",
        "rulebook: european-207",
        "field rulebook",
        "spanish-se-m, or a rulebook file in the case's folder; did you mean",
        "european-2007?"
    )]
    [InlineData(
        "photograph: P01.jpg",
        "photograph: P09.jpg",
        "field photograph",
        "P09.jpg, which is not there",
        "a photograph"
    )]
    [InlineData(
        "photograph: P01.jpg",
        "photograph: ../secret.jpg",
        "field photograph",
        "outside the folder",
        "within the case folder"
    )]
    [InlineData("statedClass: NP3", "indicator: copper-blu", "field indicator", "found copper-blu", "copper-blue")]
    [InlineData("pieces: 50", "pieces: none", "field pieces", "found none", "a whole number")]
    [InlineData("pieces: 50", "pieces: 1", "field batch", "2 pieces cut from a batch of 1", "at most as many")]
    [InlineData("piece: P01", "piece: P02", "field pieces", "P02 twice", "each piece once")]
    [InlineData("statedRetention: 8 kg/m3", "statedRetention: 8 stone", "field statedRetention", "8 stone", "kg/m3")]
    public void A_mistake_is_refused_with_its_place_and_what_was_expected(
        string right,
        string wrong,
        string place,
        string found,
        string expected
    )
    {
        var refused = Assert.Throws<InputRefusedException>(() =>
            Read(Whole.Replace(right, wrong, StringComparison.Ordinal))
        );

        Assert.Contains("case.yaml, line ", refused.Message, StringComparison.Ordinal);
        Assert.Contains(place, refused.Message, StringComparison.Ordinal);
        Assert.Contains(found, refused.Message, StringComparison.Ordinal);
        Assert.Contains(expected, refused.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("prediction: { sapwoodMm: 30 }", "moisture", "nothing", "0 to 250 %")]
    [InlineData("prediction: { moisture: 26, depthMm: 6 }", "depthMm", "an unknown field", "sapwoodMm")]
    [InlineData("prediction: { moisture: 26, species: oak }", "species", "an unknown field", "sapwoodMm")]
    [InlineData("prediction: { moisture: 26, schedule: empty sell }", "schedule", "empty sell", "full cell")]
    [InlineData("prediction: { moisture: 26, incising: light }", "incising", "light", "incised: yes")]
    [InlineData("prediction: wet", "prediction", "wet", "named fields")]
    [InlineData("charge: { species: Norway spruce, {0} }", "species", "Norway spruce", "Scots pine, as the case says")]
    [InlineData("charge: { depthMm: 12, {0} }", "depthMm", "12", "6 mm, as in the case")]
    [InlineData("charge: { zoneDepthMm: 12, {0} }", "zoneDepthMm", "12", "6 mm, as in the case")]
    [InlineData("charge: { retentionKgPerM3: 6, {0} }", "retentionKgPerM3", "6", "8 kg/m³, as in the case")]
    [InlineData(
        "charge: { readings: { tankBeforeL: 9000, strengthBeforePercent: 2 }, {0} }",
        "tankAfterL",
        "nothing",
        "0 to 10000000 L"
    )]
    [InlineData(
        "charge: { readings: { tankBeforeL: 9000, tankAfterL: 8160, weightAfterKg: 2030, strengthBeforePercent: 2 }, {0} }",
        "weightBeforeKg",
        "nothing",
        "weightBeforeKg and weightAfterKg, or neither"
    )]
    [InlineData(
        "charge: { readings: { tankBeforeL: 9000, tankAfterL: 8160, tankAtPeakL: 3300, strengthBeforePercent: 2 }, {0} }",
        "vesselFreeL",
        "nothing",
        "tankAtPeakL and vesselFreeL, or neither"
    )]
    [InlineData(
        "charge: { moisture: 26, solutionDensityKgPerM3: 1005, pieces: [ { section: 75x75, lengthMm: 1800 } ] }",
        "section",
        "75x75",
        "100 × 100 mm, as the case says"
    )]
    [InlineData(
        "charge: { moisture: 26, solutionDensityKgPerM3: 1005, pieces: [ { lengthMm: 1800 }, { lengthMm: 2100, count: 20 } ] }",
        "count",
        "nothing",
        "a whole number"
    )]
    [InlineData(
        "prediction: { moisture: 26 }\ncharge: { schedule: full cell, solutionDensityKgPerM3: 1005, pieces: [ { lengthMm: 1800 } ] }",
        "schedule",
        "full cell",
        "it stands under prediction"
    )]
    public void A_treatment_that_contradicts_its_case_is_refused_with_its_line(
        string block,
        string field,
        string found,
        string expected
    )
    {
        var whole = block.Replace(
            "{0}",
            "moisture: 26, solutionDensityKgPerM3: 1005, pieces: [ { lengthMm: 1800 } ]",
            StringComparison.Ordinal
        );
        var refused = Assert.Throws<InputRefusedException>(() => Read($"{Whole}\n{whole}"));

        var problem = Assert.Single(refused.Problems);
        Assert.Equal((true, field), (problem.Line > Whole.Count(letter => letter == '\n') + 1, problem.Field));
        Assert.Contains(found, problem.Found, StringComparison.Ordinal);
        Assert.Contains(expected, problem.Expected, StringComparison.Ordinal);
    }

    [Fact]
    public void What_the_case_says_may_be_said_again_of_its_charge()
    {
        var charge = Read(
            $"""
            {Whole}
            charge:
              name: first
              species: Pinus sylvestris
              moisture: 26
              depthMm: 6
              zoneDepthMm: 6 mm
              retentionKgPerM3: 8
              solutionDensityKgPerM3: 1005
              pieces: [ {"{"} section: 100x100, lengthMm: 1800, count: 25 {"}"} ]
            """
        ).Charge!;

        Assert.Equal(("first", 8), (charge.Name, charge.RetentionKgPerM3));
        Assert.Equal(25, Assert.Single(charge.Pieces).Count);
    }

    [Fact]
    public void The_sapwood_stated_of_a_round_piece_is_the_width_that_is_predicted_with()
    {
        var round = Whole
            .Replace("section: 100 x 100 mm", "section: round 100 mm\nstatedSapwood: 25 mm", StringComparison.Ordinal)
            .Replace(", outline: [\"10, 10\", \"90, 10\", \"90, 90\", \"10, 90\"]", "", StringComparison.Ordinal);
        _folder.Write("readings.csv", "piece,face,position_mm,depth_mm,u_mm\nP02,1,20,7.5,0.5\n");

        Assert.Equal(25, Read($"{round}\nprediction: {"{"} moisture: 26 {"}"}").Treatment!.SapwoodMm);
    }

    [Fact]
    public void Heartwood_at_the_face_may_be_stated_as_no_sapwood() =>
        Assert.Equal(0, Read($"{Whole}\nstatedSapwood: 0 mm").Case.StatedSapwoodMm);

    [Fact]
    public void Sapwood_deeper_than_half_the_thickness_is_refused()
    {
        Assert.Equal(50, Read($"{Whole}\nstatedSapwood: 50 mm").Case.StatedSapwoodMm);
        var refused = Assert.Throws<InputRefusedException>(() => Read($"{Whole}\nstatedSapwood: 51 mm"));

        var problem = Assert.Single(refused.Problems);
        Assert.Equal(("statedSapwood", "51 mm", "0 to 50 mm"), (problem.Field, problem.Found, problem.Expected));
    }

    [Fact]
    public void A_stated_sapwood_may_be_stated_with_its_uncertainty()
    {
        var read = Read($"{Whole}\nstatedSapwood: 25 mm\nstatedSapwoodUncertainty: 2 mm").Case;

        Assert.Equal((25.0, 2.0), (read.StatedSapwoodMm!.Value, read.StatedSapwoodUMm!.Value));
        Assert.Null(Read($"{Whole}\nstatedSapwood: 25 mm").Case.StatedSapwoodUMm);
        var refused = Assert.Throws<InputRefusedException>(() => Read($"{Whole}\nstatedSapwoodUncertainty: 2 mm"));
        Assert.Equal("statedSapwoodUncertainty", Assert.Single(refused.Problems).Field);
    }

    [Fact]
    public void One_photograph_is_not_evidence_of_two_pieces()
    {
        _folder.Write("P03.jpg", "bytes of a photograph");
        var refused = Assert.Throws<InputRefusedException>(() =>
            Read($"{Whole}\n  - {"{"} piece: P03, photograph: P03.jpg {"}"}")
        );

        var problem = Assert.Single(refused.Problems);
        Assert.Equal("pieces", problem.Field);
        Assert.Equal("the same photograph (P01.jpg, P03.jpg: equal SHA-256) for pieces P01 and P03", problem.Found);
    }

    [Fact]
    public void Two_sections_on_one_photograph_are_two_pieces()
    {
        var read = Read(
            $"{Whole}\n  - {"{"} piece: P03, photograph: P01.jpg, outline: [\"110, 10\", \"190, 10\", \"190, 90\", \"110, 90\"] {"}"}"
        );

        Assert.Equal(["P01", "P03"], read.Photographs.Select(photograph => photograph.Piece));
    }

    [Theory]
    [InlineData("copper-blue")]
    [InlineData("Copper-Blue")]
    public void An_indicator_is_found_by_its_name_in_any_case_of_letters(string name) =>
        Assert.Equal("copper-blue", Read($"{Whole}\nindicator: {name}").Indicator!.Key);

    [Fact]
    public void An_indicator_that_is_not_known_is_refused_with_those_that_are()
    {
        var refused = Assert.Throws<InputRefusedException>(() => Read($"{Whole}\nindicator: beetroot"));

        Assert.Equal(
            ("indicator", "beetroot", string.Join(", ", Facts.Indicators.Select(each => each.Key))),
            (refused.Problems[0].Field, refused.Problems[0].Found, Assert.Single(refused.Problems).Expected)
        );
    }

    [Fact]
    public void A_case_without_the_blocks_asks_nothing_of_its_treatment()
    {
        var read = Read(Whole);

        Assert.Equal((null, null), (read.Treatment, read.Charge));
    }

    [Fact]
    public void The_radius_of_the_heartwood_is_read_by_the_name_that_kept_cases_have() =>
        Assert.Equal(
            40,
            Assert.Single(Read(Marked("pith: \"50,120\"", "heartwoodRadius: 40 mm")).Photographs).Marks.Pith!.RadiusMm
        );

    [Fact]
    public void What_is_pointed_out_on_a_photograph_is_read_in_the_words_of_the_options()
    {
        var photograph = Assert.Single(
            Read(
                Marked(
                    "corners: [\"10, 10\", \"90,10\", \"90,90\", \"10,90\"]",
                    "scale: \"10,10 60,10 50 mm\"",
                    "treated: \"20,20 25,20\"",
                    "untreated: [\"50,50\"]",
                    "leaveOut: \"80,15\"",
                    "pith: \"50,120\"",
                    "heartwoodRadiusMm: 2 in",
                    "incised: yes"
                )
            ).Photographs
        );

        var marks = photograph.Marks;
        Assert.Equal(new MarkedPoint(10, 90), marks.Corners![3]);
        Assert.Equal(new MarkedLength(new(10, 10), new(60, 10), 50), marks.Scale);
        Assert.Equal([new MarkedPoint(20, 20), new MarkedPoint(25, 20)], marks.Treated);
        Assert.Equal([new MarkedPoint(50, 50)], marks.Untreated);
        Assert.Equal([new MarkedPoint(80, 15)], marks.LeaveOut);
        Assert.Equal(new MarkedPith(new(50, 120), 50.8), marks.Pith);
        Assert.True(photograph.IsIncised);
    }

    [Fact]
    public void The_lines_that_are_offered_for_a_case_file_are_read_back_as_the_same_marks()
    {
        var marks = new WrittenMarks
        {
            Corners = [new(10, 10), new(90.5, 10), new(90, 90), new(10, 90)],
            Scale = new(new(10, 10), new(60, 10), 50),
            Treated = [new(20, 20)],
            LeaveOut = [new(80, 15)],
            HeartwoodRing = [new(30, 30), new(50, 25), new(70, 30)],
        };

        var read = Assert.Single(Read(Marked([.. MarkText.CaseLines(marks)])).Photographs).Marks;

        Assert.Equivalent(marks, read, strict: true);
    }

    [Theory]
    [InlineData("treated: \"20,20 25;20\"", "field treated", "found 25", "points as x,y")]
    [InlineData("leaveOut: soon", "field leaveOut", "found soon", "points as x,y")]
    [InlineData("corners: \"1,1 9,1 9,9\"", "field corners", "found 3 points", "the 4 corners")]
    [InlineData("scale: \"1,1 9,1\"", "field scale", "found 1,1 9,1", "two points and a length in mm")]
    [InlineData("heartwood: \"1,1 9,1\"", "field heartwood", "found 2 points", "3 points or more")]
    [InlineData("pith: \"1,1\"", "field pith", "found it alone", "pith and heartwoodRadiusMm together")]
    [InlineData("heartwoodRadiusMm: 30 mm", "field heartwoodRadiusMm", "found it alone", "together")]
    [InlineData("treeted: \"1,1\"", "field treeted", "an unknown field", "treated")]
    public void A_mark_that_cannot_be_one_is_refused_with_its_line(
        string line,
        string place,
        string found,
        string expected
    )
    {
        var refused = Assert.Throws<InputRefusedException>(() => Read(Marked(line)));

        var problem = Assert.Single(refused.Problems);
        Assert.Contains("case.yaml, line 19", problem.ToString(), StringComparison.Ordinal);
        Assert.Contains(place, problem.ToString(), StringComparison.Ordinal);
        Assert.Contains(found, problem.ToString(), StringComparison.Ordinal);
        Assert.Contains(expected, problem.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Two_ways_of_showing_the_heartwood_are_one_too_many()
    {
        var refused = Assert.Throws<InputRefusedException>(() =>
            Read(Marked("heartwood: \"1,1 9,1 9,9\"", "heartwoodRing: \"1,1 9,1 9,9\""))
        );

        Assert.Contains("one of heartwood, heartwoodRing, or pith", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_case_is_read_from_what_was_kept_of_it_as_from_its_folder()
    {
        var folder = Read(Whole);
        var kept = new KeptFiles("T-1", folder.Files, [.. folder.Photographs.Select(photograph => photograph.File)]);

        var again = CaseFolderReader.Read(kept, Facts);

        Assert.Equal(folder.Case.Enquiry.Section, again.Case.Enquiry.Section);
        Assert.Equal(folder.Case.Assays, again.Case.Assays);
        Assert.Equal(folder.Photographs.Select(p => p.Piece), again.Photographs.Select(p => p.Piece));
        Assert.Equal(folder.RulerReadings.Select(r => r.Piece), again.RulerReadings.Select(r => r.Piece));
    }

    [Fact]
    public void A_plant_s_history_is_read_and_kept_with_the_readings_that_it_names()
    {
        const string Predicted =
            Whole + "\nmoisture: 26 %\nprediction: { sapwoodMm: 30 }\nplantHistory: plant/history.csv";
        Directory.CreateDirectory(_folder.At("plant"));
        _folder.Write("plant/history.csv", "charge,piece,depth_mm,readings\n1,a,12,\n2,,,cut.json\n");
        _folder.Write(
            "plant/cut.json",
            """[{ "file": "a.jpg", "shape": "round", "section_mm": [80], "heartwood": null, "faces": [{ "number": 1, "positions_mm": [5], "depth_mm": [9], "excluded": [false], "sapwood_mm": [null] }] }]"""
        );
        var read = Read(Predicted);
        var again = CaseFolderReader.Read(new KeptFiles("T-1", read.Files, [.. read.AllPhotographs]), Facts);

        Assert.Equal([12.0, null, 9.0], read.Plant!.Rows.Select(row => row.DepthMm));
        Assert.Equal(read.Plant.Rows, again.Plant!.Rows);
        Assert.Contains(
            "field plantHistory: found plant/history.csv, expected prediction or charge beside it",
            Assert.Throws<InputRefusedException>(() => Read(Whole + "\nplantHistory: plant/history.csv")).Message,
            StringComparison.Ordinal
        );
        _folder.Write("plant/history.csv", "charge,piece,depth_mm\n1,a,deep\n");
        Assert.Contains(
            "history.csv, line 2, field depth_mm: found \"deep\"",
            Assert.Throws<InputRefusedException>(() => Read(Predicted)).Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void A_photograph_that_was_not_kept_is_refused()
    {
        var file = new KeptFile("case.yaml", System.Text.Encoding.UTF8.GetBytes(Whole));

        var refused = Assert.Throws<InputRefusedException>(() =>
            CaseFolderReader.Read(new KeptFiles("T-1", [file], []), Facts)
        );

        Assert.Contains("P01.jpg, which was not kept", refused.Message, StringComparison.Ordinal);
    }

    // The marks begin on line 19.
    private static string Marked(params string[] lines) =>
        Whole.Replace(
            "  - { piece: P01, photograph: P01.jpg, outline: [\"10, 10\", \"90, 10\", \"90, 90\", \"10, 90\"] }",
            $"  - piece: P01\n    photograph: P01.jpg\n    {string.Join("\n    ", lines)}",
            StringComparison.Ordinal
        );

    [Theory]
    [InlineData(
        "assays.csv",
        "sample,retention_kg_per_m3,u_kg_per_m3\na,plenty,0.3\n",
        "line 2, field retention_kg_per_m3: found \"plenty\", expected a number, 0 to 1000 kg/m³, with its standard uncertainty"
    )]
    [InlineData(
        "assays.csv",
        "sample,retention_kg_per_m3,u_kg_per_m3\na,8.2,\n",
        "line 2, field retention_kg_per_m3: found \"8.2\" without u_kg_per_m3, expected a number, 0 to 1000 kg/m³, with its standard uncertainty"
    )]
    [InlineData(
        "assays.csv",
        "sample,retention_kg_per_m3,u_kg_per_m3,below_kg_per_m3\na,,,0.5\n",
        "line 1, field below_kg_per_m3: found a column by its former name, expected retention_kg_per_m3 with \"< 0.5\""
    )]
    [InlineData(
        "assays.csv",
        "sample,retention,u_kg_per_m3\na,8,0.3\n",
        "line 1, field retention_kg_per_m3: found no such column"
    )]
    [InlineData(
        "readings.csv",
        "piece,face,position_mm,depth_mm,u_mm\nP02,5,20,7.5,0.5\n",
        "line 2, field face: found \"5\", expected a whole number, 1 to 4"
    )]
    [InlineData(
        "readings.csv",
        "piece,face,position_mm,depth_mm,u_mm\nP02,1.5,20,7.5,0.5\n",
        "line 2, field face: found \"1.5\", expected a whole number, 1 to 4"
    )]
    [InlineData(
        "readings.csv",
        "piece,face,position_mm,depth_mm,u_mm\nP02,1,20,7.5,0.5\nP02,1,20,7,0.5\n",
        "line 3, field position_mm: found piece \"P02\", face 1, 20 mm, already on line 2"
    )]
    [InlineData("readings.csv", "", "line 1: found no rows")]
    public void A_cell_that_is_no_number_is_refused_with_its_line_and_column(string file, string text, string message)
    {
        _folder.Write(file, text);

        var refused = Assert.Throws<InputRefusedException>(() => Read(Whole));

        Assert.Contains($"{file}, {message}", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void An_assay_that_found_nothing_is_written_with_its_limit()
    {
        _folder.Write("assays.csv", "sample,retention_kg_per_m3\na,< 0.5\nb,14.2 ± 0.4 (k=1)\n");

        Assert.Equal([new BelowDetection(0.5, "a"), new MeasuredAssay(new(14.2, 0.4), "b")], Read(Whole).Case.Assays);
    }

    [Fact]
    public void Assays_as_a_laboratory_reports_them_count_as_the_case_says()
    {
        _folder.Write(
            "assays.csv",
            "sample,result,laboratory,report,method,sub_samples\n"
                + "a,1600 ± 40 (k=1) mg/kg Cu,Northlab,N-17,ICP,3\nb,< 20 mg/kg Cu,Southlab,S-4,XRF,\n"
        );

        var read = Read(Whole + "\nassayBasis: { countedAs: CuO, zoneDensity: 400 ± 20 (k=1) }\n").Case.Assays;

        var found = Assert.IsType<MeasuredAssay>(read[0]);
        Assert.Equal(1600 * 1.25178 * 400 / 1e6, found.KgPerM3.Value, 1e-5);
        Assert.Equal(
            ("a", "Northlab", "N-17", "ICP", 3, "1600 ± 40 (k=1) mg/kg Cu"),
            (found.Sample, found.Laboratory, found.Report, found.Method, found.SubSamples, found.AsReported)
        );
        Assert.Equal(found.KgPerM3.Value / 20, found.SharedKgPerM3, 9);
        var nothing = Assert.IsType<BelowDetection>(read[1]);
        Assert.Equal(20 * 1.25178 * 400 / 1e6, nothing.LimitKgPerM3, 1e-6);
    }

    [Fact]
    public void An_assay_says_which_zone_was_cut_by_its_row_or_else_by_the_case()
    {
        _folder.Write(
            "assays.csv",
            "sample,retention_kg_per_m3,u_kg_per_m3,zone\na,9,0.3,6 mm\na,8,0.3,sapwood\nb,8,0.3,\nc,8,0.3,12.5\n"
        );

        AssayedZone?[] Zones(string basis) => [.. Read(Whole + basis).Case.Assays.Select(assay => assay.Zone)];

        Assert.Equal([new(6), new(DepthMm: null), null, new(12.5)], Zones(""));
        Assert.Equal([new(6), new(DepthMm: null), new(3), new(12.5)], Zones("\nassayBasis: { zoneDepthMm: 3 }\n"));
    }

    [Theory]
    [InlineData("9", "\"0-6,5 mm\"", 6.5)]
    [InlineData("9", "\"6,5\"", 6.5)]
    [InlineData("9.5", "0-6.5 mm", 6.5)]
    [InlineData("9.5", "0 to 12 mm", 12)]
    [InlineData("9.5", "0 mm – 6 mm", 6)]
    public void A_zone_is_written_from_the_surface_or_by_its_depth_and_with_the_tables_decimal_sign(
        string retention,
        string zone,
        double depthMm
    )
    {
        _folder.Write("assays.csv", $"sample,retention_kg_per_m3,u_kg_per_m3,zone\na,{retention},1,{zone}\n");

        Assert.Equal(new(depthMm), Assert.Single(Read(Whole).Case.Assays).Zone);
    }

    [Fact]
    public void A_decimal_comma_beside_decimal_points_is_named()
    {
        _folder.Write("assays.csv", "sample,retention_kg_per_m3,u_kg_per_m3,zone\na,9.5,0.3,\"0-6,5 mm\"\n");

        var said = Assert.Throws<InputRefusedException>(() => Read(Whole)).Message;

        Assert.Contains("field zone: found \"0-6,5 mm\", with a decimal comma, ", said, StringComparison.Ordinal);
        Assert.Contains("with a decimal point as elsewhere in the table", said, StringComparison.Ordinal);
    }

    [Fact]
    public void A_content_on_a_face_is_spread_over_the_zone_of_its_row()
    {
        _folder.Write("assays.csv", "sample,result,zone\na,24 ± 1 (k=1) g/m2 Cu,3\nb,24 ± 1 (k=1) g/m2 Cu,\n");

        Assert.Equal(
            [8, 4],
            Read(Whole + "\nassayBasis: { countedAs: Cu, zoneDepthMm: 6 }\n")
                .Case.Assays.Cast<MeasuredAssay>()
                .Select(assay => assay.KgPerM3.Value)
        );
    }

    [Theory]
    [InlineData("heartwood")]
    [InlineData("0 mm")]
    [InlineData("-3")]
    [InlineData("6 in")]
    [InlineData("6-12 mm")]
    [InlineData("\"6,500\"")]
    public void A_zone_that_is_none_is_refused(string zone)
    {
        _folder.Write("assays.csv", $"sample,retention_kg_per_m3,u_kg_per_m3,zone\na,9,0.3,{zone}\n");

        var refused = Assert.Throws<InputRefusedException>(() => Read(Whole));

        Assert.Contains("assays.csv, line 2, field zone: found", refused.Message, StringComparison.Ordinal);
        Assert.Contains("or sapwood, for all of it", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Rows_of_one_sample_and_report_are_one_assay_of_the_product()
    {
        _folder.Write(
            "assays.csv",
            "sample,result\na,1850 ± 60 (k=1) mg/kg Cu\na,3100 ± 90 (k=1) mg/kg Cr\na,2900 ± 80 (k=1) mg/kg As\n"
        );

        var assay = Assert.Single(
            Read(Whole + "\nassayBasis: { product: cca-c, zoneDensity: 430 ± 20 (k=1) }\n").Case.Assays
        );

        Assert.Equal(5.47, Assert.IsType<MeasuredAssay>(assay).KgPerM3.Value, 2);
    }

    [Theory]
    [InlineData("ca-c", "copper-azole")]
    [InlineData("acq-d", "acq")]
    [InlineData("\"CuO 11.5 %, H3BO3 4 %\"", null)]
    public void Which_preservative_a_product_is_is_known_by_its_code(string product, string? expected) =>
        Assert.Equal(
            expected,
            Read(
                Whole + $"\nassayBasis: {{ product: {product}, zoneDensity: 430 ± 20 (k=1) }}\n"
            ).Case.AssayBasis.ProductKind?.Key
        );

    [Fact]
    public void Parts_of_a_product_found_by_methods_of_their_own_are_one_assay()
    {
        _folder.Write(
            "assays.csv",
            "sample,result,method\na,0.65 ± 0.02 (k=1) % m/m Cu,ICP\na,130 ± 5 (k=1) mg/kg tebuconazole,GC\na,< 10 mg/kg propiconazole,GC\n"
        );

        var assay = Assert.IsType<MeasuredAssay>(Assert.Single(Read(Whole + Product("ca-c")).Case.Assays));

        Assert.Equal(6635 * 400 / 1e6, assay.KgPerM3.Value, 9);
        Assert.Equal("ICP; GC", assay.Method);
        Assert.Empty(assay.PartsNotAnalysed);
        var missing = assay.PartsOffFormula.Single(part => part.IsGross);
        Assert.Equal(("propiconazole", true), (missing.Compound.Name, missing.IsAtMost));
    }

    [Fact]
    public void The_same_substance_by_two_methods_is_two_assays()
    {
        _folder.Write(
            "assays.csv",
            "sample,result,method\na,5000 ± 100 (k=1) mg/kg Cu,ICP\na,0.51 ± 0.02 (k=1) % m/m copper,XRF\n"
        );

        Assert.Equal(
            ["ICP", "XRF"],
            Read(Whole + "\nassayBasis: { countedAs: CuO, zoneDensity: 400 ± 20 (k=1) }\n")
                .Case.Assays.Select(assay => assay.Method)
        );
    }

    [Theory]
    [InlineData("acq-d", "DDAC")]
    [InlineData("copper azole type C", "tebuconazole", "propiconazole")]
    [InlineData("Cu 96.1 %")]
    public void Copper_alone_leaves_parts_of_a_product_not_analysed(string product, params string[] parts)
    {
        _folder.Write("assays.csv", "sample,result\na,5000 ± 100 (k=1) mg/kg Cu\n");

        var assay = Assert.Single(Read(Whole + Product(product)).Case.Assays);

        Assert.Equal(parts, assay.PartsNotAnalysed.Select(part => part.Name));
    }

    [Theory]
    [InlineData("ACQ", "did you mean \"acq-a\", \"acq-b\", \"acq-c\", \"acq-d\"?")]
    [InlineData("copper azole", "did you mean \"ca-b\", \"ca-c\", \"cba-a\"?")]
    public void A_product_without_its_type_is_asked_about(string product, string message)
    {
        var refused = Assert.Throws<InputRefusedException>(() => Read(Whole + Product(product)));

        Assert.Contains(message, refused.Message, StringComparison.Ordinal);
    }

    private static string Product(string product) =>
        $"\nassayBasis: {{ product: {product}, zoneDensity: 400 ± 20 (k=1) }}\n";

    [Fact]
    public void Without_a_density_the_species_own_is_taken_and_carries_its_uncertainty()
    {
        _folder.Write("assays.csv", "sample,result\na,1000 ± 10 (k=1) mg/kg Cu\n");

        var assay = Assert.IsType<MeasuredAssay>(Assert.Single(Read(Whole).Case.Assays));

        // The middle between 520 over 1.12 for the volume at 12 %, and some 7 % less for the green volume.
        Assert.InRange(assay.KgPerM3.Value, 0.44, 0.455);
        Assert.True(assay.SharedKgPerM3 > assay.KgPerM3.Value / 10);
    }

    [Theory]
    [InlineData("a,1600 mg/kg Cu", "{ countedAs: CuO }", "assays.csv, line 2, field result")]
    [InlineData("a,1600 mg/kg Cu", "{ countedAs: CuO }", "without one a figure cannot be held against a demand")]
    [InlineData("a,1600 ± 40 (k=1) mg/kg Cu", "{ countedAs: H3BO3 }", "expected a substance that shares an element")]
    [InlineData("a,1600 ± 40 mg/kg Cu", "{ countedAs: CuO }", "expected the coverage factor k")]
    [InlineData("a,16 ± 4 (k=1) g/m2 Cu", "{ countedAs: Cu }", "expected zoneDepthMm in the case")]
    [InlineData("a,1600 ± 40 (k=1) mg/kg Cu", "{ countedAs: Cu + Cr }", "expected a figure for each substance")]
    [InlineData("a,1600 ± 40 (k=1) mg/kg Cu", "{ countedAs: Kr }", "field countedAs: found Kr")]
    [InlineData("a,1600 ± 40 (k=1) mg/kg Cu", "{ product: CuO 120 % }", "field product: found CuO 120 %")]
    [InlineData(
        "a,1600 ± 40 (k=1) mg/kg Cu",
        "{ zoneDensity: 430 }",
        "expected zoneDensity in the case with an uncertainty"
    )]
    [InlineData("a,1600 ± 40 (k=1) mg/kg Cu", "{ zoneDensity: 4300 }", "field zoneDensity: found 4300")]
    [InlineData(
        "a,1600 ± 40 (k=1) mg/kg Cu",
        "{ countedAs: Cu, product: cca-c }",
        "one of the two, this or countedAs (--counted-as)"
    )]
    public void Figures_that_cannot_be_counted_are_refused(string row, string basis, string message)
    {
        _folder.Write("assays.csv", $"sample,result\n{row}\n");

        var refused = Assert.Throws<InputRefusedException>(() => Read($"{Whole}\nassayBasis: {basis}\n"));

        Assert.Contains(message, refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void All_mistakes_are_reported_at_once()
    {
        var text = Whole
            .Replace("useClass: 4", "useClass: 9", StringComparison.Ordinal)
            .Replace("species: Scots pine", "species: unobtainium", StringComparison.Ordinal);

        Assert.Equal(2, Assert.Throws<InputRefusedException>(() => Read(text)).Problems.Count);
    }

    [Fact]
    public void A_photograph_that_belongs_to_no_piece_is_refused_until_a_reason_is_given()
    {
        _folder.Write("P03.jpg", "another photograph");
        var refused = Assert.Throws<InputRefusedException>(() => Read(Whole));
        Assert.Contains("no piece for the photograph P03.jpg", refused.Message, StringComparison.Ordinal);

        var read = Read(Whole + "\nleftOut:\n  - { photograph: P03.jpg, reason: the saw slipped }\n");
        Assert.Single(read.Photographs);
        var leftOut = Assert.Single(read.LeftOut);
        Assert.Equal(("P03.jpg", "the saw slipped", "P03.jpg"), (leftOut.FileName, leftOut.Reason, leftOut.Piece));
        Assert.Equal(64, leftOut.File!.Sha256.Length);
    }

    [Fact]
    public void A_photograph_left_out_that_is_too_large_has_its_hash_all_the_same()
    {
        using (var large = File.Create(_folder.At("large.jpg")))
            large.SetLength((200L * 1024 * 1024) + 1);
        var leftOut = Assert.Single(
            Read(Whole + "\nleftOut:\n  - { photograph: large.jpg, reason: the scan is too large }\n").LeftOut
        );

        Assert.Null(leftOut.File);
        using var file = File.OpenRead(_folder.At("large.jpg"));
        Assert.Equal(Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(file)), leftOut.Sha256);
    }

    [Theory]
    [InlineData("P09.jpg", "P09.jpg, which is not there")]
    [InlineData("P01.jpg", "P01.jpg twice")]
    public void A_photograph_left_out_must_be_there_and_nowhere_else(string file, string found)
    {
        var refused = Assert.Throws<InputRefusedException>(() =>
            Read(Whole + $"\nleftOut:\n  - {{ photograph: {file}, reason: the saw slipped }}\n")
        );

        Assert.Contains(found, Assert.Single(refused.Problems).ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void The_days_of_treatment_and_of_the_moisture_are_read()
    {
        var read = Read(Whole + "\ntreatedOn: 2026-04-20\nmoistureMeasuredOn: 2026-04-18\n").Case;

        Assert.Equal((new DateOnly(2026, 4, 20), new DateOnly(2026, 4, 18)), (read.TreatedOn, read.MoistureMeasuredOn));
    }

    [Fact]
    public void A_coating_denied_beside_class_3c_is_kept_beside_what_the_class_says()
    {
        var text = Whole.Replace("useClass: 4", "useClass: 3c\ncoated: no", StringComparison.Ordinal);

        Assert.Equal(
            (false, true),
            (Read(text).Case.Enquiry.Exposure.IsCoated, Read(text).Case.Enquiry.IsCoatedByClass)
        );
    }

    [Fact]
    public void A_folder_may_be_named_with_a_separator_at_its_end()
    {
        _folder.Write("case.yaml", Whole);

        var read = CaseFolderReader.Read(new FolderFiles(_folder.Path + Path.DirectorySeparatorChar), Facts);

        Assert.Equal("P01.jpg", Assert.Single(read.Photographs).FileName);
    }

    [Fact]
    public void A_folder_without_a_case_file_is_refused()
    {
        var refused = Assert.Throws<InputRefusedException>(() =>
            CaseFolderReader.Read(new FolderFiles(_folder.At("nowhere")), Facts)
        );

        Assert.Contains("expected a case folder with a case.yaml in it", refused.Message, StringComparison.Ordinal);
    }

    private CaseFolder Read(string text)
    {
        _folder.Write("case.yaml", text);
        return CaseFolderReader.Read(new FolderFiles(_folder.Path), Facts);
    }
}
