using Alburnum.Cases;
using Alburnum.Records.CaseFolders;
using Alburnum.Records.Facts;
using Alburnum.Requirements;
using Alburnum.Tests.Shared;
using Alburnum.Workflows.Cases;

namespace Alburnum.Workflows.Tests.Cases;

public sealed class ExpectedCaseTests : IDisposable
{
    private const string Plain = """
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
        statedRetention: 6 kg/m3
        batch: { pieces: 50, mustPass: 75 % }
        rulerReadings: readings.csv
        """;

    private const string Prediction = "prediction: { sapwoodMm: 30, moisture: 26 }";
    private const string Charge = "charge: { solutionDensityKgPerM3: 1005, pieces: [ { lengthMm: 1800 } ] }";

    private static readonly FactLibrary Facts = new(Repository.At("data"));
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task A_case_carries_what_was_expected_and_is_judged_as_without_it()
    {
        var plain = await Run(Plain);
        var both = await Run($"{Plain}\n{Prediction}\n{Charge}");

        Assert.Equal((null, null), (plain.Judged.Predicted.Prediction, plain.Judged.Predicted.Charge));
        Assert.Same(both.Expected.Prediction!.Quick, both.Judged.Predicted.Prediction);
        Assert.Same(both.Expected.Charge!.Plan, both.Judged.Predicted.Charge);
        Assert.Equal(plain.Judged.Overall.Verdict, both.Judged.Overall.Verdict);
        Assert.Equal(plain.Judged.Overall.Probability, both.Judged.Overall.Probability);
    }

    [Fact]
    public async Task Readings_at_the_vessel_put_the_uptake_as_run_beside_the_plan()
    {
        const string readings =
            "  readings: { tankBeforeL: 1000, tankAfterL: 700, weightBeforeKg: 500, weightAfterKg: 800, strengthBeforePercent: 2 }";
        var block = "charge:\n  solutionDensityKgPerM3: 1005\n  pieces: [ { lengthMm: 1800 } ]";
        var planned = await Run($"{Plain}\n{Prediction}\n{block}");
        var run = await Run($"{Plain}\n{Prediction}\n{block}\n{readings}");

        Assert.Null(planned.Expected.Account);
        Assert.Equal(planned.Expected.Charge!.Plan, run.Expected.Charge!.Plan);
        Assert.Equal(300, run.Expected.Account!.Account.NetByTankL.Value, 1e-9);
        Assert.Equal(300 / 1.005 / 0.9, run.Expected.Account.Account.NetLPerM3.Value, 1e-9);
        Assert.Equal(planned.Judged.Overall.Verdict, run.Judged.Overall.Verdict);
    }

    [Fact]
    public async Task The_charge_takes_batch_section_depth_and_retention_from_the_case()
    {
        var planned = (await Run($"{Plain}\n{Prediction}\n{Charge}")).Expected.Charge!;

        Assert.Equal("Posts", planned.Expected.Order.Name);
        Assert.Equal(0.1 * 0.1 * 1.8 * 50, planned.Expected.Order.VolumeM3, 1e-9);
        Assert.Equal(6, planned.Plan.Question.RetentionKgPerM3);
        Assert.Equal(26, planned.Expected.Order.Treatment.MoisturePercent);
    }

    [Fact]
    public async Task A_charge_alone_is_predicted_as_with_the_same_words_under_prediction()
    {
        var alone = Charge.Replace("{ solution", "{ sapwoodMm: 30, moisture: 26, solution", StringComparison.Ordinal);

        Assert.Equal(
            (await Run($"{Plain}\n{Prediction}\n{Charge}")).Expected.Prediction!.Quick.MeanMm,
            (await Run($"{Plain}\n{alone}")).Expected.Prediction!.Quick.MeanMm
        );
    }

    [Fact]
    public async Task The_rule_of_the_code_is_what_is_predicted()
    {
        var run = await Run($"{Plain}\n{Prediction}");

        Assert.Equal(
            ((Required)run.Judged.Required.Answer).Requirement.Penetration,
            run.Expected.Prediction!.Asked.Prediction.Rule
        );
    }

    [Theory]
    [InlineData(1.5, true)]
    [InlineData(26, false)]
    [InlineData(49, true)]
    public async Task Depths_outside_the_predicted_range_are_remarked_on(double depthMm, bool isRemarked)
    {
        var remarks = (await Run($"{Plain}\n{Prediction}", depthMm)).Judged.Measured.Remarks;

        Assert.Equal(isRemarked, remarks.OfType<MeasuredOutsidePrediction>().Any());
    }

    [Fact]
    public async Task What_nobody_knows_of_the_timber_is_remarked_on_and_the_case_judged_all_the_same()
    {
        var unknown = Plain.Replace("Scots pine", "jack pine", StringComparison.Ordinal);
        var run = await Run($"{unknown}\nprediction: {{ moisture: 26 }}\n{Charge}");

        Assert.Equal((null, null), (run.Expected.Prediction, run.Expected.Charge));
        Assert.Equal(
            [
                typeof(PermeabilityNotKnown),
                typeof(PermeabilityNotKnown),
                typeof(DensityNotKnown),
                typeof(SapwoodNotKnown),
            ],
            run.Judged.Measured.Remarks.Select(remark => remark.GetType())
        );
        Assert.Equal((await Run(unknown)).Judged.Overall.Verdict, run.Judged.Overall.Verdict);
    }

    [Fact]
    public async Task A_plan_that_nobody_should_work_to_is_remarked_on_and_the_case_judged_all_the_same()
    {
        var run = await Run(
            $"{Plain}\n{Prediction}\n{Charge.Replace("{ solution", "{ strengthMostPercent: 1, solution", StringComparison.Ordinal)}"
        );

        Assert.Single(run.Judged.Measured.Remarks.OfType<ChargeNotPlanned>());
        Assert.NotNull(run.Expected.Charge);
        Assert.Equal((await Run(Plain)).Judged.Overall.Verdict, run.Judged.Overall.Verdict);
    }

    [Fact]
    public async Task A_charge_of_creosote_is_not_predicted_as_one_in_water()
    {
        var tarred = $"{Plain}\npreservative: creosote";
        var run = await Run($"{tarred}\n{Prediction}\n{Charge}");

        Assert.Equal((null, null), (run.Expected.Prediction, run.Expected.Charge));
        Assert.IsType<NotInWater>(Assert.Single(run.Judged.Measured.Remarks));
        Assert.Equal((await Run(tarred)).Judged.Overall.Verdict, run.Judged.Overall.Verdict);
    }

    [Fact]
    public async Task Without_a_demanded_depth_nothing_is_predicted()
    {
        var run = await Run($"{Plain.Replace("NP3", "NP1", StringComparison.Ordinal)}\n{Prediction}");

        Assert.IsType<NoDepthToReach>(Assert.Single(run.Judged.Measured.Remarks));
        Assert.Null(run.Expected.Prediction);
    }

    [Theory]
    [InlineData("prediction: { sapwoodMm: 30, moisture: 190 }", "", "moisture", 15)]
    [InlineData(
        Prediction,
        "charge: { moistureLimit: 10, dryingHumidityPercent: 95, solutionDensityKgPerM3: 1005, pieces: [ { lengthMm: 1800 } ] }",
        "moistureLimit",
        15
    )]
    public async Task A_treatment_that_cannot_be_is_refused_at_its_line(
        string prediction,
        string charge,
        string field,
        int line
    )
    {
        var refused = await Assert.ThrowsAsync<InputRefusedException>(() => Run($"{Plain}\n{prediction}\n{charge}"));

        var problem = Assert.Single(refused.Problems);
        Assert.EndsWith("case.yaml", problem.File, StringComparison.Ordinal);
        Assert.Equal((line, field), (problem.Line, problem.Field));
    }

    [Fact]
    public async Task Prediction_and_charge_rest_on_the_plant_s_own_history()
    {
        var asked = $"{Plain}\n{Prediction}\n{Charge}";
        var plain = await Run(asked);
        _folder.Write(
            "history.csv",
            "charge,piece,depth_mm,uptake_l_per_m3,way_mm\n"
                + string.Concat(Enumerable.Range(0, 30).Select(i => $"c{i / 5},p{i},{5 + i % 4},130,30\n"))
        );
        var calibrated = await Run($"{asked}\nplantHistory: history.csv");
        var (before, after) = (plain.Expected, calibrated.Expected);

        var wood = Assert.Single(after.Prediction!.Plant);
        Assert.Equal(5, wood.Calibration.DepthsMm!.Charges.Count);
        Assert.True(after.Prediction.Quick.MeanMm.Middle < 0.7 * before.Prediction!.Quick.MeanMm.Middle);
        Assert.Equal(
            after.Prediction.Quick.UptakeLPerM3.Middle,
            after.Charge!.Plan.Question.UptakeLPerM3.Value,
            0.02 * after.Prediction.Quick.UptakeLPerM3.Middle
        );
        var (own, usual) = (after.Charge.Plan.Question.UptakeLPerM3, before.Charge!.Plan.Question.UptakeLPerM3);
        Assert.True(own.Value < 0.7 * usual.Value, $"{own} is not far from {usual}.");
    }

    [Fact]
    public async Task What_is_wrong_in_the_plant_s_history_is_refused_there()
    {
        _folder.Write("history.csv", "charge,piece,depth_mm,schedule\nc1,p1,12,no such\n");
        var refused = await Assert.ThrowsAsync<InputRefusedException>(() =>
            Run($"{Plain}\n{Prediction}\nplantHistory: history.csv")
        );

        var problem = Assert.Single(refused.Problems);
        Assert.EndsWith("history.csv", problem.File, StringComparison.Ordinal);
        Assert.Equal((2, "schedule"), (problem.Line, problem.Field));
    }

    private Task<CaseReading> Run(string text, double depthMm = 20)
    {
        _folder.Write("case.yaml", text);
        var rows = Enumerable.Range(1, 4).Select(face => FormattableString.Invariant($"P01,{face},50,{depthMm},0.5\n"));
        _folder.Write("readings.csv", $"piece,face,position_mm,depth_mm,u_mm\n{string.Concat(rows)}");
        return RunCase.JudgeAsync(
            new FolderFiles(_folder.Path),
            Facts,
            progress: null,
            TestContext.Current.CancellationToken
        );
    }
}
