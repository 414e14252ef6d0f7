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
        [HelpOf(typeof(AcceptanceFields), nameof(AcceptanceFields.Cut))]
        public int? Cut { get; init; }

        [CommandOption("--failures <COUNT>")]
        [HelpOf(typeof(AcceptanceFields), nameof(AcceptanceFields.Failures))]
        public int? Failures { get; init; }
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var cut = Options.Whole(AcceptanceFields.Cut, settings.Cut);
        var failures = Options.Whole(
            AcceptanceFields.Failures.Option,
            settings.Failures,
            Ranges.Failures with
            {
                High = cut,
                Unit = "failures, since no more can fail than were cut",
            }
        );
        var judged = JudgeBatch.ByVerdicts(
            JudgeBatch.Counted(cut, failures),
            settings.Request(facts, cut, AcceptanceFields.Cut.Option)
        );
        var document = JudgeMapping.Of(judged);
        return console.Show(document, settings.Json, () => JudgePrint.Print(console, document));
    }
}
