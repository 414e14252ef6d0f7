using System.Text.Json;
using Alburnum.Tests.Shared;

namespace Alburnum.Cli.Tests.Charging;

public sealed class ChargeCommandTests : IDisposable
{
    private const string Order = """
        name: Thornhollow orchard posts, charge 12
        species: Scots pine
        sapwoodMm: 30
        moisture: 36
        moistureLimit: 28
        depthMm: 20
        retentionKgPerM3: 6
        solutionDensityKgPerM3: 1005
        pieces:
          - { section: 75x75, lengthMm: 1800, count: 200 }

        """;
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task A_plan_balances_and_says_what_it_assumed_and_how_long_to_dry()
    {
        var run = await AlburnumRun.Of("charge", "plan", _folder.Write("posts.yaml", Order), "--json");
        using var json = JsonDocument.Parse(run.Output);
        var root = json.RootElement;

        Assert.Equal(0.075 * 0.075 * 1.8 * 200, root.GetProperty("volume_m3").GetDouble(), 1e-9);
        Assert.Equal(
            Value(root, "solution_l") * 1.005,
            Value(root, "product_kg") + Value(root, "water_kg"),
            1e-6 * Value(root, "solution_l")
        );
        Assert.InRange(root.GetProperty("drying_days").GetDouble(), 1, 60);
        Assert.Contains("pith in the middle", root.GetProperty("assumptions").ToString(), StringComparison.Ordinal);
        Assert.Contains("label", root.GetProperty("cautions").ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_density_given_stands_in_place_of_the_species_own()
    {
        var usual = await AlburnumRun.Of("charge", "plan", _folder.Write("usual.yaml", Order), "--json");
        var heavy = await AlburnumRun.Of(
            "charge",
            "plan",
            _folder.Write("heavy.yaml", "densityKgPerM3: 600\n" + Order),
            "--json"
        );
        using var before = JsonDocument.Parse(usual.Output);
        using var after = JsonDocument.Parse(heavy.Output);

        Assert.True(
            after.RootElement.GetProperty("weight_before_kg").GetDouble()
                > before.RootElement.GetProperty("weight_before_kg").GetDouble()
        );
    }

    [Fact]
    public async Task Readings_that_cannot_be_are_refused_in_words()
    {
        var file = _folder.Write(
            "posts.yaml",
            Order
                + """
                readings:
                  tankBeforeL: 8000
                  tankAfterL: 9000
                  strengthBeforePercent: 2.0

                """
        );
        var run = await AlburnumRun.Of("charge", "reconcile", file);

        Assert.Equal(2, run.Status);
        Assert.Contains(
            "posts.yaml, line 13, row \"Thornhollow orchard posts, charge 12\", field tankAfterL: found 9000, expected at most the 8000 L before",
            run.Errors,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task Boron_spreads_further_in_wetter_wood_and_washes_out()
    {
        var run = await AlburnumRun.Of(
            "boron",
            "100x50",
            "--loading",
            "8",
            "--wanted",
            "1",
            "--moisture",
            "60",
            "--wet-days",
            "7"
        );

        Assert.Equal(("", 0), (run.Errors, run.Status));
        Assert.Contains("Washed out by running water", run.Output, StringComparison.Ordinal);
        Assert.Contains("from memory", run.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("1", true)]
    [InlineData("0.5", false)]
    public async Task A_border_too_thin_for_the_loading_wanted_is_said_to_be(string wanted, bool isSaid)
    {
        // 2 mm of 8 kg/m³ all round 100 × 50 mm: 8 × (1 − 96 × 46/(100 × 50)) kg/m³.
        var run = await AlburnumRun.Of("boron", "100x50", "--loading", "8", "--wanted", wanted, "--moisture", "40");

        Assert.Equal(("", 0), (run.Errors, run.Status));
        Assert.Equal(isSaid, run.Output.Contains("comes to 0.93 kg/m³", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Boron_in_wood_drier_than_anything_known_is_refused()
    {
        var run = await AlburnumRun.Of("boron", "100x50", "--loading", "8", "--wanted", "1", "--moisture", "12");

        Assert.Equal(2, run.Status);
        Assert.Contains("--moisture: found 12, expected 20 to 120 %", run.Errors, StringComparison.Ordinal);
    }

    private static double Value(JsonElement plan, string field) =>
        plan.GetProperty(field).GetProperty("value").GetDouble();
}
