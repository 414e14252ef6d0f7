using Alburnum.Cli.Acceptance;
using Alburnum.Cli.Handling;
using Spectre.Console.Cli;

namespace Alburnum.Cli.Measuring;

/// <summary>The commands about what a cut end and a sample of wood show.</summary>
internal static class MeasuringCommands
{
    public static void AddTo(IConfigurator config)
    {
        config
            .AddCommand<ReagentCommand>("reagent")
            .WithDescription("Find what shows a preservative on a fresh cut, and what misleads it");
        config
            .AddCommand<CardCommand>("card")
            .WithDescription("Draw the card that tells a photograph's scale, to be printed");
        config.AddCommand<MeasureCommand>("measure").WithDescription("Measure depth of penetration on photographs");
        config
            .AddCommand<RetentionCommand>("retention")
            .WithDescription("Turn a laboratory's figures into the retention that is required");
    }
}
