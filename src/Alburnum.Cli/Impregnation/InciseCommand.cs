using System.ComponentModel;
using Alburnum.Facts;
using Alburnum.Impregnation.Prediction;
using Alburnum.Records.Facts;
using Alburnum.Reports.Impregnation;
using Alburnum.Reports.Words;
using Alburnum.Workflows.Impregnation;
using Spectre.Console;
using Spectre.Console.Cli;
using static Alburnum.Reports.Words.Wording;

namespace Alburnum.Cli.Impregnation;

/// <summary>Looks for the lightest incising that makes enough of the cores reach the depth, and says what it costs in strength.</summary>
internal sealed class InciseCommand(IAnsiConsole console, FactLibrary facts) : AsyncCommand<InciseCommand.Settings>
{
    internal sealed class Settings : PlacedSettings
    {
        [CommandOption("--share <PERCENT>")]
        [Description("Share of cores that must reach the depth, %")]
        [DefaultValue(90.0)]
        public double SharePercent { get; init; }

        [CommandOption("--tooth-length <MM>")]
        [Description("Length of a cut along the grain at the face, mm")]
        [DefaultValue(9.0)]
        public double ToothLengthMm { get; init; }

        [CommandOption("--pieces <N>")]
        [Description("Pieces to draw for each pattern tried")]
        [DefaultValue(Draws.Pieces)]
        public int Pieces { get; init; }

        [CommandOption("--boxes <N>")]
        [Description("Boxes on each side of the flow solver's cell, which checks the pattern found; 0 skips the check")]
        [DefaultValue(32)]
        public int Boxes { get; init; }
    }

    public override async Task<int> ExecuteAsync(
        CommandContext context,
        Settings settings,
        CancellationToken cancellationToken
    )
    {
        var request = new IncisingRequest
        {
            Treating = settings.Request(facts),
            CoreShare = Options.Number("--share", settings.SharePercent, Ranges.MustPassPercent) / 100,
            ToothLengthMm = Options.Number("--tooth-length", settings.ToothLengthMm, Ranges.IncisionLengthMm),
            Pieces = Options.Whole("--pieces", settings.Pieces, Ranges.DrawnPieces),
            Seed = settings.Seed,
            Boxes = settings.Boxes == 0 ? null : Options.Whole("--boxes", settings.Boxes, Ranges.CellBoxes),
        };
        var document = IncisingMapping.Of(
            await Progress.RunAsync(
                console,
                Said("terminal.treating-cell"),
                progress => DesignIncising.Run(request, facts, progress, cancellationToken),
                cancellationToken
            )
        );
        return console.Show(document, settings.Json, () => Print(document));
    }

    private void Print(IncisingDocument document)
    {
        console.WriteLine();
        console.MarkupLineInterpolated($"[bold]{document.Title}[/]");
        console.WriteLine(IncisingWords.Current.Required(document.Demand, document.WantedShare));
        var table = new Table().Border(TableBorder.Simple);
        table.AddColumns(
            "",
            Said("terminal.cut-out"),
            Said("terminal.cores-that-reach"),
            Said("terminal.pieces-that-meet"),
            Said("terminal.pattern")
        );
        foreach (var trial in document.Tried)
            table.AddRow(
                trial.Name,
                Figures.Number(trial.CutOutCm3PerM2, 0),
                Figures.Certainty(trial.CoreShare),
                Figures.Certainty(trial.PieceShare),
                trial.Pattern
            );
        console.Write(table);
        console.WriteLine(document.Answer);
        foreach (var sentence in document.Usual)
            console.WriteLine(sentence);
        foreach (var line in new[] { document.StrengthPenalty, document.PenaltySource, document.Check })
            if (line is not null)
                console.WriteLine(line);
        foreach (var line in document.Assumptions.Concat(document.Cautions))
            console.WriteLine("  " + line);
    }
}
