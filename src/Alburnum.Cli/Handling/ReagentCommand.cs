using Alburnum.Facts;
using Alburnum.Records.Facts;
using Alburnum.Reports.Handling;
using Alburnum.Workflows.Handling;
using Spectre.Console;
using Spectre.Console.Cli;

namespace Alburnum.Cli.Handling;

/// <summary>What shows a preservative on a fresh cut.</summary>
internal sealed class ReagentCommand(IAnsiConsole console, FactLibrary facts) : Command<ReagentCommand.Settings>
{
    internal sealed class Settings : JsonSettings
    {
        [CommandOption("--preservative <NAME>")]
        [HelpOf(typeof(HandlingFields), nameof(HandlingFields.Preservative))]
        public string? Preservative { get; init; }
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        if (settings.Preservative is { } name && ChooseReagent.OfShared(name, facts) is { } shared)
        {
            var alike = HandlingMapping.From(shared);
            return console.Show(alike, settings.Json, HandlingText.Lines(alike));
        }
        var problems = new List<InputProblem>();
        var preservative = new OptionFields(settings, problems).Named(
            HandlingFields.Preservative,
            facts.Preservatives.Find
        );
        if (problems.Count > 0)
            throw new InputRefusedException(problems);
        var document = HandlingMapping.From(
            preservative is null ? ChooseReagent.All(facts) : ChooseReagent.Run(preservative, facts)
        );
        return console.Show(document, settings.Json, HandlingText.Lines(document));
    }
}
