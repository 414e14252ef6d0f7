using System.ComponentModel;
using Alburnum.Facts;
using Alburnum.Records.Charges;
using Alburnum.Records.Facts;
using Alburnum.Reports.Impregnation;
using Alburnum.Reports.Words;
using Alburnum.Timber;
using Alburnum.Workflows.Impregnation;
using Spectre.Console;
using Spectre.Console.Cli;
using static Alburnum.Reports.Words.Wording;

namespace Alburnum.Cli.Impregnation;

/// <summary>How far boron spreads from a treated border in damp storage, and how much washes out in the wet.</summary>
internal sealed class BoronCommand(IAnsiConsole console, FactLibrary facts) : Command<BoronCommand.Settings>
{
    internal sealed class Settings : JsonSettings
    {
        [CommandArgument(0, "<SECTION>")]
        [Description("Size, such as \"100x50\"")]
        public required string Section { get; init; }

        [CommandOption("--border <MM>")]
        [Description("Depth of the border just after treatment, mm")]
        [DefaultValue(2.0)]
        public double BorderMm { get; init; }

        [CommandOption("--loading <KG_PER_M3>")]
        [Description("Loading of that border, kg/m³")]
        public double? Loading { get; init; }

        [CommandOption("--wanted <KG_PER_M3>")]
        [Description("Target loading, which counts as reached, kg/m³")]
        public double? Wanted { get; init; }

        [CommandOption("--moisture <PERCENT>")]
        [HelpOf(typeof(DampStoreFields), nameof(DampStoreFields.Moisture))]
        public double MoisturePercent { get; init; } = DampStoreFields.Moisture.DefaultNumber;

        [CommandOption("--temperature <C>")]
        [HelpOf(typeof(DampStoreFields), nameof(DampStoreFields.Temperature))]
        public double Celsius { get; init; } = DampStoreFields.Temperature.DefaultNumber;

        [CommandOption("--weeks <N>")]
        [Description("Weeks in storage, wrapped so that nothing escapes")]
        [DefaultValue(6.0)]
        public double Weeks { get; init; }

        [CommandOption("--wet-days <N>")]
        [Description("Days in running water afterwards")]
        public double WetDays { get; init; }
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var document = BoronMapping.Of(SpreadBoron.Run(Request(settings), facts.Boron));
        return console.Show(document, settings.Json, () => Print(document));
    }

    private BoronRequest Request(Settings settings)
    {
        var (section, law) = (TreatingOptions.Section(settings.Section), facts.Boron);
        var border = Options.Number(
            "--border",
            settings.BorderMm,
            Ranges.DepthMm with
            {
                High = SectionBorder.DeepestMm(section),
            }
        );
        var loading = Options.Number("--loading", settings.Loading, Ranges.RetentionKgPerM3);
        return new()
        {
            Section = section,
            BorderMm = border,
            LoadingKgPerM3 = loading,
            WantedKgPerM3 = Options.Number(
                "--wanted",
                settings.Wanted,
                Ranges.RetentionKgPerM3 with
                {
                    High = loading,
                }
            ),
            MoisturePercent = Options.Number(
                DampStoreFields.Moisture.Option,
                settings.MoisturePercent,
                Ranges.MoisturePercent with
                {
                    Low = law.LeastMoisturePercent,
                    High = law.MostMoisturePercent,
                }
            ),
            Celsius = Options.Number(DampStoreFields.Temperature, settings.Celsius),
            Weeks = Options.Number("--weeks", settings.Weeks, Ranges.StoreWeeks),
            WetDays = Options.Number("--wet-days", settings.WetDays, Ranges.WetDays),
        };
    }

    private void Print(BoronDocument document)
    {
        var words = BoronWords.Current;
        BoronPlaceDocument[] places = [document.Slow, document.Middle, document.Fast];
        var table = new Table().Border(TableBorder.Simple);
        table.AddColumns("", Said("terminal.slow-wood"), Said("terminal.middle"), Said("terminal.fast-wood"));
        Row(words.Depth, place => Figures.Number(place.DepthMm, 1));
        Row(words.Middle, place => Figures.Number(place.MiddleKgPerM3, 2));
        if (document.Middle is { WashedOutShare: not null })
        {
            Row(words.WashedOut, place => Figures.WholePercent(place.WashedOutShare ?? 0));
            Row(words.MiddleThen, place => Figures.Number(place.WashedMiddleKgPerM3 ?? 0, 2));
        }
        console.Write(table);
        foreach (var line in document.Notes.Concat(document.Cautions))
            console.WriteLine(line);

        void Row(string name, Func<BoronPlaceDocument, string> cell) => table.AddRow([name, .. places.Select(cell)]);
    }
}
