using Alburnum.Facts;
using Alburnum.Records.Facts;
using Alburnum.Reports.Handling;
using Alburnum.Reports.Words;
using Alburnum.Workflows.Handling;
using Spectre.Console;
using Spectre.Console.Cli;
using static Alburnum.Reports.Words.Wording;

namespace Alburnum.Cli.Handling;

/// <summary>When a preservative has fixed, by strength and temperature.</summary>
internal sealed class FixationCommand(IAnsiConsole console, FactLibrary facts) : Command<FixationCommand.Settings>
{
    internal sealed class Settings : JsonSettings
    {
        [CommandArgument(0, "<PRESERVATIVE>")]
        [HelpOf(typeof(FixationFields), nameof(FixationFields.Preservative))]
        public required string Preservative { get; init; }

        [CommandOption("--strength <PERCENT>")]
        [HelpOf(typeof(FixationFields), nameof(FixationFields.Strength))]
        public double? StrengthPercent { get; init; }

        [CommandOption("--temperature <C>")]
        [HelpOf(typeof(FixationFields), nameof(FixationFields.Temperature))]
        public double Celsius { get; init; } = FixationFields.Temperature.DefaultNumber;

        [CommandOption("--hours <N>")]
        [HelpOf(typeof(FixationFields), nameof(FixationFields.Hours))]
        public double? Hours { get; init; }
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var problems = new List<InputProblem>();
        IFields fields = new OptionFields(settings, problems);
        var preservative =
            fields.Named(FixationFields.Preservative, facts.Preservatives.Find)
            ?? throw new InputRefusedException(problems);
        var document = FixationMapping.Of(
            AskFixation.Run(
                new()
                {
                    Preservative = preservative,
                    StrengthPercent = Options.OptionalNumber(FixationFields.Strength, settings.StrengthPercent),
                    Celsius = Options.Number(FixationFields.Temperature, settings.Celsius),
                    Hours = Options.OptionalNumber(FixationFields.Hours, settings.Hours),
                },
                facts
            )
        );
        return console.Show(document, settings.Json, () => Print(document));
    }

    private void Print(FixationDocument document)
    {
        var words = FixationWords.Current;
        console.MarkupLineInterpolated($"[bold]{words.Title(document.Preservative, document.TemperatureCelsius)}[/]");
        if (document.IsKnown)
        {
            var table = new Table().Border(TableBorder.Simple);
            table.AddColumns(["", .. document.Strengths.Select(each => words.Strength(each.StrengthPercent))]);
            for (var n = 0; n < Fixation.Shares.Count; n++)
                table.AddRow([
                    words.TimeTo(Fixation.Shares[n]),
                    .. document.Strengths.Select(each => words.Time(each.HoursTo[n].Hours)),
                ]);
            if (document.Hours is { } asked)
                table.AddRow([words.After(asked), .. document.Strengths.Select(each => words.Fixed(each.ShareAfter))]);
            console.Write(table);
        }
        foreach (var note in document.Notes)
            console.WriteLine(note);
        foreach (var answer in document.Answers)
            console.WriteLine("  " + HandlingText.Line(answer));
        console.MarkupLineInterpolated($"[bold]{Said("sheet.cautions")}[/]");
        foreach (var caution in document.Cautions)
            console.WriteLine("  " + caution);
    }
}
