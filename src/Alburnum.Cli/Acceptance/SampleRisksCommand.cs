using Alburnum.Acceptance;
using Alburnum.Records.Facts;
using Alburnum.Workflows.Acceptance;
using Spectre.Console;
using Spectre.Console.Cli;

namespace Alburnum.Cli.Acceptance;

/// <summary>Samples by a plan that is designed for two risks; which kind of plan comes with the command's name.</summary>
internal sealed class SampleRisksCommand(IAnsiConsole console, FactLibrary facts)
    : SampleCommand<SampleRisksCommand.Settings>(console, facts)
{
    internal sealed class Settings : SampleSettings
    {
        [CommandOption("--accept <PERCENT>")]
        [HelpOf(typeof(AcceptanceFields), nameof(AcceptanceFields.Accept))]
        public double? Accept { get; init; }

        [CommandOption("--producer-risk <PERCENT>")]
        [HelpOf(typeof(AcceptanceFields), nameof(AcceptanceFields.ProducerRisk))]
        public double ProducerRisk { get; init; } = 5;

        [CommandOption("--reject <PERCENT>")]
        [HelpOf(typeof(AcceptanceFields), nameof(AcceptanceFields.Reject))]
        public double? Reject { get; init; }

        [CommandOption("--consumer-risk <PERCENT>")]
        [HelpOf(typeof(AcceptanceFields), nameof(AcceptanceFields.ConsumerRisk))]
        public double ConsumerRisk { get; init; } = 10;
    }

    protected override SamplingRequest Request(CommandContext context, Settings settings) =>
        new SampleForRisks((RiskPlan)context.Data!, Risks(settings), settings.Pieces, settings.DrawnSeed);

    private static RiskPoints Risks(Settings settings)
    {
        var (p1, p2) = (
            Options.Number(AcceptanceFields.Accept, settings.Accept),
            Options.Number(AcceptanceFields.Reject, settings.Reject)
        );
        if (p2 <= p1)
            throw AcceptanceFields.Reject.Refused(
                file: null,
                InputProblem.Number(p2),
                $"more than {AcceptanceFields.Accept.Option}, which is {InputProblem.Number(p1)} % failing"
            );
        return new(
            p1 / 100,
            Options.Number(AcceptanceFields.ProducerRisk, settings.ProducerRisk) / 100,
            p2 / 100,
            Options.Number(AcceptanceFields.ConsumerRisk, settings.ConsumerRisk) / 100
        );
    }
}
