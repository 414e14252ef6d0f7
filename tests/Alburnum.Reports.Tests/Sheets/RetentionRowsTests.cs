using Alburnum.Penetration;
using Alburnum.Reports.Documents;
using Alburnum.Reports.Sheets;

namespace Alburnum.Reports.Tests.Sheets;

public sealed class RetentionRowsTests
{
    [Fact]
    public void Of_several_retentions_each_is_told_by_itself_and_no_chance_stands_for_all()
    {
        var retention = Of(
            Rule(Verdict.DoesNotConform, 0.004, "Joint."),
            Judged("the code's 8 kg/m³ (outer 6 mm)", Rule(Verdict.Conforms, 0.999, "Outer.")),
            Judged(
                "that of the contract's NP5, 8 kg/m³ (all the sapwood)",
                Rule(Verdict.DoesNotConform, 0.004, "Deep.")
            )
        );

        Assert.Equal(
            [
                "Rule not met",
                "The code's 8 kg/m³ (outer 6 mm): rule met",
                "Outer.",
                "That of the contract's NP5, 8 kg/m³ (all the sapwood): rule not met",
                "Deep.",
            ],
            RetentionRows.Says(retention)
        );
    }

    [Fact]
    public void The_only_retention_is_told_with_its_chance()
    {
        var rule = Rule(Verdict.Conforms, 0.97, "Mean.");

        var says = RetentionRows.Says(Of(rule, Judged("the code's 8 kg/m³", rule))).ToList();

        Assert.StartsWith("Rule met. Chance", says[0], StringComparison.Ordinal);
        Assert.Equal(["Mean."], says[1..]);
    }

    private static RetentionDocument Of(RuleDocument verdict, params IReadOnlyList<RetentionJudgedDocument> each) =>
        new()
        {
            Assays = [],
            Verdict = verdict,
            ByDemand = each,
        };

    private static RetentionJudgedDocument Judged(string demand, RuleDocument verdict) =>
        new()
        {
            Demand = demand,
            KgPerM3 = 8,
            Verdict = verdict,
        };

    private static RuleDocument Rule(Verdict verdict, double chance, string reason) =>
        new()
        {
            Verdict = verdict,
            ProbabilityLow = chance,
            ProbabilityHigh = chance,
            Reasons = [reason],
        };
}
