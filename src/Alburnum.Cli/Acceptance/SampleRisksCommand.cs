using System.ComponentModel;
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
        [Description("Failing share to accept")]
        public double? Accept { get; init; }

        [CommandOption("--producer-risk <PERCENT>")]
        [Description("Risk of rejecting a lot at the share to accept; default: 5")]
        public double ProducerRisk { get; init; } = 5;

        [CommandOption("--reject <PERCENT>")]
        [Description("Failing share to reject")]
        public double? Reject { get; init; }

        [CommandOption("--consumer-risk <PERCENT>")]
        [Description("Risk of accepting a lot at the share to reject; default: 10")]
        public double ConsumerRisk { get; init; } = 10;
    }

    protected override SamplingRequest Request(CommandContext context, Settings settings) =>
        new SampleForRisks((RiskPlan)context.Data!, Risks(settings), settings.Pieces, settings.DrawnSeed);

    private static RiskPoints Risks(Settings settings)
    {
        var (p1, p2) = (
            Options.Number("--accept", settings.Accept, 0.01, 90, "% failing"),
            Options.Number("--reject", settings.Reject, 0.02, 99, "% failing")
        );
        if (p2 <= p1)
            throw Options.Refused(
                "--reject",
                Options.Digits(p2),
                $"more than --accept, which is {Options.Digits(p1)} % failing"
            );
        return new(
            p1 / 100,
            Options.Number("--producer-risk", settings.ProducerRisk, 0.1, 50, "%") / 100,
            p2 / 100,
            Options.Number("--consumer-risk", settings.ConsumerRisk, 0.1, 50, "%") / 100
        );
    }
}
