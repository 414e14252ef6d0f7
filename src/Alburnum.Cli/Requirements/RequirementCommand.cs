using System.ComponentModel;
using Alburnum.Records;
using Alburnum.Records.Facts;
using Alburnum.Reports.Drawings;
using Alburnum.Reports.Requirements;
using Alburnum.Workflows.Requirements;
using Spectre.Console;
using Spectre.Console.Cli;
using static Alburnum.Reports.Words.Wording;

namespace Alburnum.Cli.Requirements;

/// <summary>What a code of practice demands of a piece of wood, and why.</summary>
internal sealed class RequirementCommand(IAnsiConsole console, FactLibrary facts)
    : AsyncCommand<RequirementCommand.Settings>
{
    internal sealed class Settings : EnquirySettings
    {
        [CommandOption("--rulebook <FILE|NAME>")]
        [Description(
            "Rulebook to ask: a file of your own, or one that \"alburnum rulebook list\" names; default: british-2014"
        )]
        public string Rulebook { get; init; } = "british-2014";

        [CommandOption("--all-rows")]
        [Description("Show every row that failed on one field, not only the first few")]
        public bool AllRows { get; init; }

        [CommandOption("--svg <FILE>")]
        [Description("Also draw the route to the answer in an SVG file")]
        public string? Svg { get; init; }
    }

    public override async Task<int> ExecuteAsync(
        CommandContext context,
        Settings settings,
        CancellationToken cancellationToken
    )
    {
        if (settings.Svg is { } place)
            WholeFile.Examine(place);
        var rulebook = RulebookFile.Named(settings.Rulebook, facts);
        var enquiry = settings.Enquiry(facts, rulebook);
        var found = await Progress.RunAsync(
            Progress.Beside(console, settings.Json),
            Said("terminal.looking-for-routes"),
            progress => FindRequirement.Run(enquiry, rulebook, facts, progress, cancellationToken),
            cancellationToken
        );
        var document = AnswerMapping.From(found);
        var status = console.Show(document, settings.Json, AnswerText.Lines(document, settings.AllRows, "--all-rows"));
        if (settings.Svg is { } file)
            await WholeFile.WriteAsync(file, Svg.Write(DecisionDiagram.Draw(document)), cancellationToken);
        return status;
    }
}
