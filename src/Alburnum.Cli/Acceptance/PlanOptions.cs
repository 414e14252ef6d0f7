namespace Alburnum.Cli.Acceptance;

/// <summary>Which options of <c>sample</c> belong to which plan. One given beside a plan that has no use for it would be passed over in silence.</summary>
internal static class PlanOptions
{
    private static readonly string[] Risks = ["--accept", "--producer-risk", "--reject", "--consumer-risk"];

    private static readonly (string Plan, string[] Takes)[] Plans =
    [
        ("attributes", ["--aql", "--level", "--severity"]),
        ("share", ["--must-pass", "--cut", "--level"]),
        ("smallest", Risks),
        ("double", Risks),
        ("sequential", Risks),
        ("variables", Risks),
        ("show", ["--conforming", "--confidence", "--failures"]),
    ];

    /// <summary>Refuses the first option that the plan does not take.</summary>
    /// <exception cref="InputRefusedException">There is one, or no such plan.</exception>
    public static void RefuseOthers(SampleCommand.Settings settings)
    {
        var takes = Array.Find(Plans, known => known.Plan == settings.Plan).Takes ?? throw NoSuchPlan(settings.Plan);
        foreach (var (option, isGiven) in Given(settings))
        {
            if (!isGiven || takes.Contains(option, StringComparer.Ordinal))
                continue;
            var others = Plans.Where(known => known.Takes.Contains(option, StringComparer.Ordinal));
            throw Options.Refused(
                option,
                $"a value beside --plan {settings.Plan}",
                $"{string.Join(", ", takes)}; or --plan {string.Join(", ", others.Select(known => known.Plan))}, which takes it"
            );
        }
    }

    public static InputRefusedException NoSuchPlan(string plan) =>
        Options.Refused("--plan", plan, string.Join(", ", Plans.Select(known => known.Plan)));

    private static IEnumerable<(string Option, bool IsGiven)> Given(SampleCommand.Settings settings) =>
        [
            ("--aql", settings.Aql is not null),
            ("--level", settings.Level is not null),
            ("--severity", settings.Severity is not null),
            ("--must-pass", settings.MustPass is not null),
            ("--cut", settings.Cut is not null),
            ("--accept", settings.Accept is not null),
            ("--producer-risk", settings.ProducerRisk is not null),
            ("--reject", settings.Reject is not null),
            ("--consumer-risk", settings.ConsumerRisk is not null),
            ("--conforming", settings.Conforming is not null),
            ("--confidence", settings.Confidence is not null),
            ("--failures", settings.Failures is not null),
        ];
}
