using Alburnum.Workflows.Acceptance;
using Spectre.Console.Cli;

namespace Alburnum.Cli.Acceptance;

/// <summary>The commands about lots, batches and plants.</summary>
internal static class AcceptanceCommands
{
    public static void AddTo(IConfigurator config)
    {
        config.AddBranch("sample", AddSample);
        config.AddBranch("judge", AddJudge);
        config.AddBranch("history", AddHistory);
    }

    private static void AddSample(IConfigurator<CommandSettings> sample)
    {
        sample.SetDescription("Work out what to cut from a lot, how to pick it and what passes");
        sample
            .AddCommand<SampleAttributesCommand>("attributes")
            .WithDescription("The plan from a standard's tables, indexed by an AQL");
        sample
            .AddCommand<SampleShareCommand>("share")
            .WithDescription("A stated number of pieces, of which a share must pass");
        sample
            .AddCommand<SampleRisksCommand>("smallest")
            .WithData(RiskPlan.Smallest)
            .WithDescription("The smallest single plan for two risks");
        sample
            .AddCommand<SampleRisksCommand>("double")
            .WithData(RiskPlan.Double)
            .WithDescription("A plan with two samples, for two risks");
        sample
            .AddCommand<SampleRisksCommand>("sequential")
            .WithData(RiskPlan.Sequential)
            .WithDescription("A plan that cuts piece by piece (Wald), for two risks");
        sample
            .AddCommand<SampleRisksCommand>("variables")
            .WithData(RiskPlan.Variables)
            .WithDescription("A plan for measured depths that are close to normal, for two risks");
        sample
            .AddCommand<SampleShowCommand>("show")
            .WithDescription("How many pieces to cut to show that a given share conforms");
        sample
            .AddCommand<SampleIsolatedCommand>("isolated")
            .WithDescription("A plan for one lot that stands alone, by its limiting quality");
        sample
            .AddCommand<SampleSchemeCommand>("scheme")
            .WithDescription("How the standard's plans behave together, with their switching rules");
    }

    private static void AddJudge(IConfigurator<CommandSettings> judge)
    {
        judge.SetDescription("Judge a batch from the pieces cut from it");
        judge
            .AddCommand<JudgeTableCommand>("table")
            .WithDescription("From a table of pieces, already judged or with their depths");
        judge.AddCommand<JudgeCountsCommand>("counts").WithDescription("From two counts: pieces cut and failures");
        judge
            .AddCommand<JudgeValuesCommand>("values")
            .WithDescription("By variables, from a retention or least depth of each piece");
        judge
            .AddCommand<JudgeCaseCommand>("case")
            .WithDescription("From a case folder, which holds everything needed; nothing is kept or written");
    }

    private static void AddHistory(IConfigurator<CommandSettings> history)
    {
        history.SetDescription("Watch a plant from charge to charge or lot to lot");
        history
            .AddCommand<HistoryChargesCommand>("charges")
            .WithDescription("Watch depths, retentions and uptakes from charge to charge");
        history
            .AddCommand<HistoryLotsCommand>("lots")
            .WithDescription("Follow lots through normal, tightened and reduced inspection");
    }
}
