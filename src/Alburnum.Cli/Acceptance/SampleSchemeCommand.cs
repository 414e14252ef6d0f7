using System.ComponentModel;
using Alburnum.Records.Facts;
using Alburnum.Reports.Acceptance;
using Alburnum.Reports.Words;
using Alburnum.Workflows.Acceptance;
using Spectre.Console;
using Spectre.Console.Cli;

namespace Alburnum.Cli.Acceptance;

/// <summary>Shows how a standard's scheme behaves with its switching.</summary>
internal sealed class SampleSchemeCommand(IAnsiConsole console, FactLibrary facts)
    : Command<SampleSchemeCommand.Settings>
{
    internal sealed class Settings : JsonSettings
    {
        [CommandOption("--lot <PIECES>")]
        [HelpOf(typeof(AcceptanceFields), nameof(AcceptanceFields.Lot))]
        public int? Lot { get; init; }

        [CommandOption("--aql <PERCENT>")]
        [HelpOf(typeof(AcceptanceFields), nameof(AcceptanceFields.Aql))]
        public double? Aql { get; init; }

        [CommandOption("--level <LEVEL>")]
        [HelpOf(typeof(AcceptanceFields), nameof(AcceptanceFields.Level))]
        public string Level { get; init; } = AcceptanceFields.Level.Default;

        [CommandOption("--reduction-agreed")]
        [Description("Reduced inspection is agreed to whenever the run of accepted lots allows it")]
        public bool ReductionAgreed { get; init; }
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var scheme = SchemeDocument.Of(
            PlanScheme.Of(
                facts.Sampling,
                Options.Whole(AcceptanceFields.Lot, settings.Lot),
                Options.Word(AcceptanceFields.Level, settings.Level, InspectionKeys.ReadLevel),
                Options.Number(AcceptanceFields.Aql, settings.Aql),
                settings.ReductionAgreed
            )
        );
        return console.Show(scheme, settings.Json, () => Print(scheme));
    }

    private void Print(SchemeDocument scheme)
    {
        var words = SchemeWords.Current;
        console.WriteLine();
        console.MarkupLineInterpolated(
            $"[bold]{words.Title(scheme.Standard, scheme.Aql, scheme.Level, scheme.LotSize)}[/]"
        );
        foreach (var plan in scheme.Plans)
            console.WriteLine("  " + words.Plan(plan.Severity, plan.Cut, plan.MayFail, plan.RejectedFrom));
        console.WriteLine();
        var table = new Table().Border(TableBorder.Simple);
        foreach (var heading in words.Headings)
            table.AddColumn(new TableColumn(new Text(heading)).RightAligned());
        foreach (var point in scheme.Points)
            table.AddRow(words.Row(point).Select(cell => new Text(cell)));
        console.Write(table);
        foreach (var note in scheme.Notes)
            console.WriteLine("  " + note);
    }
}
