using System.ComponentModel;
using Alburnum.Facts;
using Alburnum.Records.Facts;
using Alburnum.Reports.Acceptance;
using Alburnum.Workflows.Acceptance;
using Spectre.Console;
using Spectre.Console.Cli;

namespace Alburnum.Cli.Acceptance;

/// <summary>Judges a batch from two counts.</summary>
internal sealed class JudgeCountsCommand(IAnsiConsole console, FactLibrary facts) : Command<JudgeCountsCommand.Settings>
{
    internal sealed class Settings : CountingSettings
    {
        [CommandOption("--cut <PIECES>")]
        [Description("Pieces cut")]
        public int? Cut { get; init; }

        [CommandOption("--failures <COUNT>")]
        [Description("Pieces that failed")]
        public int? Failures { get; init; }
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var cut = Options.Whole("--cut", settings.Cut, Ranges.Pieces);
        var failures = Options.Whole(
            "--failures",
            settings.Failures,
            NumberRange.Whole(0, cut, "failures, since no more can fail than were cut")
        );
        var judged = JudgeBatch.ByVerdicts(JudgeBatch.Counted(cut, failures), settings.Request(facts, cut, "--cut"));
        JudgePrint.Show(console, JudgeMapping.Of(judged), settings.Json);
        return CommandLine.Done;
    }
}
