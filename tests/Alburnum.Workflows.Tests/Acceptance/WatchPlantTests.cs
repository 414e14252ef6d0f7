using System.Globalization;
using Alburnum.Acceptance.History;
using Alburnum.Acceptance.Indexed;
using Alburnum.Records.Facts;
using Alburnum.Records.Tables;
using Alburnum.Tests.Shared;
using Alburnum.Workflows.Acceptance;

namespace Alburnum.Workflows.Tests.Acceptance;

public sealed class WatchPlantTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    private Table Open(string text) => Table.Open(_folder.Write("table.csv", text), null);

    private PlantHistory Watched(string names, Func<int, string> row, int charges, WatchRequest request) =>
        WatchPlant.Charges(
            ChargeTable.Of(Open($"{names}\n{string.Join('\n', Enumerable.Range(1, charges).Select(row))}\n")),
            request,
            TestContext.Current.CancellationToken
        );

    [Fact]
    public void Mean_and_spread_are_those_of_the_charges()
    {
        var history = Watched(
            "charge,mean_depth_mm",
            i => $"C{i},{i % 2 * 2 + 8}",
            40,
            new(25, LeastDepthMm: 9, RequiredKgPerM3: null)
        );

        var depth = Assert.Single(history.Measures);
        Assert.Equal((40, 9.0), (depth.State.Count, depth.State.Mean));
        Assert.Equal(Math.Sqrt(40.0 / 39), depth.State.StandardDeviation, 1e-12);
        Assert.Equal(20, depth.State.BelowLimit);
    }

    [Fact]
    public void A_fall_is_signalled_and_the_newest_charge_stands_first()
    {
        var history = Watched(
            "charge,mean_depth_mm",
            i => string.Create(CultureInfo.InvariantCulture, $"C{i},{(i % 2 == 0 ? 9.4 : 8.6) - (i > 40 ? 1 : 0)}"),
            60,
            new(25, null, null)
        );

        Assert.Contains(history.Signalled, charge => charge.Signals.HasFlag(Signals.ShiftDown));
        var numbers = history.Signalled.Select(charge => int.Parse(charge.Charge[1..], CultureInfo.InvariantCulture));
        Assert.Equal(numbers.OrderDescending(), numbers);
        Assert.All(numbers, number => Assert.True(number > 40));
    }

    [Fact]
    public void No_more_signals_are_kept_than_are_shown()
    {
        var history = Watched("charge,mean_depth_mm", i => $"C{i},5", 1000, new(25, LeastDepthMm: 6, null));

        Assert.Equal(WatchPlant.SignalsKept, history.Signalled.Count);
        Assert.Equal("C1000", history.Signalled[0].Charge);
        Assert.Equal(1000, history.Measures[0].Signalled);
    }

    [Fact]
    public void A_limit_holds_for_the_measures_of_its_unit()
    {
        var history = Watched(
            "charge,mean_depth_mm,retention_kg_per_m3,strength_percent",
            i => $"C{i},{8 + i % 2},{13 + i % 2},{2 + i % 2}",
            30,
            new(25, LeastDepthMm: 6, RequiredKgPerM3: 12)
        );

        Assert.Equal([6, 12, null], history.Measures.Select(measure => measure.Rules.LowerLimit));
        Assert.Null(history.Measures[2].Capability);
    }

    [Fact]
    public void Lots_end_where_the_switching_rules_leave_the_plant()
    {
        var standard = new FactLibrary(Repository.At("data")).Sampling;
        var lots = WatchPlant.Lots(
            Open("lot,pieces,cut,failures\nL1,500,50,11\nL2,500,50,4\nL3,500,50,12\nL4,500,50,6\n"),
            new(standard.Tables, standard.Switching, InspectionLevel.II, 10)
        );

        Assert.Equal((2, Severity.Tightened), (lots.Accepted, lots.Standing.Severity));
    }
}
