using System.ComponentModel;
using Alburnum.Records.Facts;
using Alburnum.Reports.Handling;
using Alburnum.Requirements;
using Alburnum.Workflows.Handling;
using Spectre.Console;
using Spectre.Console.Cli;

namespace Alburnum.Cli.Handling;

/// <summary>A question about treated timber beside its treatment.</summary>
internal sealed class HandlingCommand(IAnsiConsole console, FactLibrary facts) : Command<HandlingCommand.Settings>
{
    internal sealed class Settings : JsonSettings
    {
        [CommandArgument(0, "<ABOUT>")]
        [Description("What is asked about: fixings, moisture, fixation, leaching, burning, waste or storage")]
        public required string About { get; init; }

        [CommandOption("--preservative <NAME>")]
        [HelpOf(typeof(HandlingFields), nameof(HandlingFields.Preservative))]
        public string? Preservative { get; init; }

        [CommandOption("--use-class <CLASS>")]
        [HelpOf(typeof(HandlingFields), nameof(HandlingFields.UseClass))]
        public string? UseClass { get; init; }

        [CommandOption("--place <NAME>")]
        [HelpOf(typeof(HandlingFields), nameof(HandlingFields.Place))]
        public string? Place { get; init; }
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var problems = new List<InputProblem>();
        var question = HandlingFields.Read(new OptionFields(settings, problems), Subject(settings.About), facts);
        if (problems.Count > 0)
            throw new InputRefusedException(problems);
        var document = HandlingMapping.From(AskHandling.Run(question, facts));
        return console.Show(document, settings.Json, HandlingText.Lines(document));
    }

    private HandlingSubject Subject(string about) =>
        facts.Handling.Subjects.FirstOrDefault(each =>
            string.Equals(each.Key, about, StringComparison.OrdinalIgnoreCase)
        )
        ?? throw Options.Refused(
            "ABOUT",
            $"\"{about}\"",
            string.Join(", ", facts.Handling.Subjects.Select(each => each.Key))
        );
}
