using Alburnum.Reports.Sheets;
using Alburnum.Requirements;

namespace Alburnum.Reports.Tests.Sheets;

public sealed class DemandRowsTests
{
    [Fact]
    public void Where_nothing_is_needed_no_zone_and_no_retention_are_asked_for_and_insects_are_named()
    {
        var none = SampleDocument.Conforming.Requirement with
        {
            Outcome = AnswerOutcome.NotNeeded,
            Reason = "It stays dry.",
            Penetration = null,
            AnalyticalZone = null,
            RetentionFactor = null,
            RetentionKgPerM3 = null,
            MoistureMaxPercent = null,
            Unless = ["furniture beetle: the sapwood"],
        };

        var rows = DemandRows.Of(none, Standing.Published).ToList();

        Assert.Equal(["Code of practice", "Answer", "Unless", "Weakest standing"], rows.Select(row => row.Name));
        Assert.Equal("not needed, unless insects that attack it live where it is used: It stays dry.", rows[1].Value);
    }

    [Fact]
    public void Each_figure_wears_its_own_standing()
    {
        var demand = SampleDocument.Conforming.Requirement with
        {
            PenetrationStanding = Standing.Published,
            AnalyticalZoneStanding = Standing.FromMemory,
            RetentionStanding = Standing.WorkedOut,
        };

        var rows = DemandRows.Of(demand, Standing.FromMemory).ToDictionary(row => row.Name);

        Assert.EndsWith("in the sapwood (published)", rows["Penetration"].Value, StringComparison.Ordinal);
        Assert.Equal("6 mm lateral (from memory)", rows["Analytical zone"].Value);
        Assert.EndsWith("(worked out)", rows["Retention"].Value, StringComparison.Ordinal);
    }

    [Fact]
    public void The_code_of_a_copy_is_shown_with_its_file_and_hash()
    {
        var copy = SampleDocument.Conforming.Requirement with
        {
            RulebookCopy = new() { File = "my.yaml", Sha256 = "ab12" },
        };

        Assert.Equal("An invented code; my.yaml, SHA-256 ab12", DemandRows.Of(copy, Standing.Published).First().Value);
    }
}
