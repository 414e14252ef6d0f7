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
        sample.SetDescription("Say what to cut from a lot, how to pick it, what passes");
        sample
            .AddCommand<SampleAttributesCommand>("attributes")
            .WithDescription("The plan of a standard's tables, indexed at an AQL");
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
            .WithDescription("A plan in two samples for two risks");
        sample
            .AddCommand<SampleRisksCommand>("sequential")
            .WithData(RiskPlan.Sequential)
            .WithDescription("Piece by piece (Wald) for two risks");
        sample
            .AddCommand<SampleRisksCommand>("variables")
            .WithData(RiskPlan.Variables)
            .WithDescription("By measured depths that are near normal, for two risks");
        sample
            .AddCommand<SampleShowCommand>("show")
            .WithDescription("Pieces to cut so that a conforming share is shown");
    }

    private static void AddJudge(IConfigurator<CommandSettings> judge)
    {
        judge.SetDescription("Judge a batch from the pieces cut from it");
        judge
            .AddCommand<JudgeTableCommand>("table")
            .WithDescription("From a table of pieces, judged already or with their depths");
        judge.AddCommand<JudgeCountsCommand>("counts").WithDescription("From two counts: pieces cut and failures");
        judge
            .AddCommand<JudgeValuesCommand>("values")
            .WithDescription("By variables, from a retention or least depth of each piece");
        judge
            .AddCommand<JudgeCaseCommand>("case")
            .WithDescription("From a case folder, which states everything itself; nothing is kept or written");
    }

    private static void AddHistory(IConfigurator<CommandSettings> history)
    {
        history.SetDescription("Watch a plant over its charges or lots");
        history
            .AddCommand<HistoryChargesCommand>("charges")
            .WithDescription("Watch depths, retentions and uptakes from charge to charge");
        history
            .AddCommand<HistoryLotsCommand>("lots")
            .WithDescription("Follow lots through normal, tightened and reduced inspection");
    }
}
