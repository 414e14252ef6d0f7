using System.ComponentModel;
using System.Globalization;
using Alburnum.Impregnation.Diffusing;
using Alburnum.Records.Facts;
using Alburnum.Reports.Words;
using Alburnum.Timber;
using Spectre.Console;
using Spectre.Console.Cli;

namespace Alburnum.Cli.Impregnation;

/// <summary>How far boron spreads from a treated border in damp store, and how much washes out in the wet.</summary>
internal sealed class BoronCommand(IAnsiConsole console, FactLibrary facts) : Command<BoronCommand.Settings>
{
    internal sealed class Settings : CommandSettings
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
        [Description("Loading that counts as reached, kg/m³")]
        public double? Wanted { get; init; }

        [CommandOption("--moisture <PERCENT>")]
        [Description("Moisture in store, %")]
        [DefaultValue(30.0)]
        public double MoisturePercent { get; init; }

        [CommandOption("--temperature <C>")]
        [Description("Temperature in store, °C")]
        [DefaultValue(15.0)]
        public double Celsius { get; init; }

        [CommandOption("--weeks <N>")]
        [Description("Weeks in store, wrapped so that nothing leaves")]
        [DefaultValue(6.0)]
        public double Weeks { get; init; }

        [CommandOption("--wet-days <N>")]
        [Description("Days in running water afterwards")]
        public double WetDays { get; init; }
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        if (!SectionText.TryParse(settings.Section, out var section))
            throw Options.Refused("SECTION", settings.Section, SectionText.Expected);
        var law = facts.Boron;
        var half = section.ThicknessMm / 2;
        var border = Options.Number("--border", settings.BorderMm, 0.1, half, "mm");
        var loading = Options.Number("--loading", settings.Loading, 0.01, 1000, "kg/m³");
        var wanted = Options.Number("--wanted", settings.Wanted, 0.001, loading, "kg/m³");
        var moisture = Options.Number(
            "--moisture",
            settings.MoisturePercent,
            law.LeastMoisturePercent,
            law.MostMoisturePercent,
            "%"
        );
        var celsius = Options.Number("--temperature", settings.Celsius, 0, 60, "°C");
        var weeks = Options.Number("--weeks", settings.Weeks, 0, 520, "weeks");
        var wet = Options.Number("--wet-days", settings.WetDays, 0, 3650, "days");
        var middle = law.M2PerS(moisture, celsius);
        var soaked = law.M2PerS(law.MostMoisturePercent, celsius);
        var start = SaltProfile.Border(half, border, loading);
        var table = new Table().Border(TableBorder.Simple);
        foreach (var heading in new[] { "", "Slow wood", "Middle", "Fast wood" })
            table.AddColumn(heading);
        SaltProfile[] stored =
        [
            .. Factors(law).Select(factor => start.After(middle * factor, 7 * weeks, isFaceWet: false)),
        ];
        Row("Depth with the loading wanted, mm", stored.Select(profile => Figures.Number(profile.DepthMm(wanted), 1)));
        Row("Loading in the middle, kg/m³", stored.Select(profile => Figures.Number(profile.Loading[^1], 2)));
        if (wet > 0)
        {
            SaltProfile[] washed =
            [
                .. stored.Zip(Factors(law), (profile, factor) => profile.After(soaked * factor, wet, isFaceWet: true)),
            ];
            Row(
                "Washed out by running water",
                washed.Select(profile => Figures.WholePercent(profile.WashedOut / start.Held))
            );
            Row("Loading in the middle then, kg/m³", washed.Select(profile => Figures.Number(profile.Loading[^1], 2)));
        }
        console.Write(table);
        if (start.Held / half < wanted)
            console.WriteLine(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"Spread evenly, the border comes to {start.Held / half:0.00} kg/m³, less than wanted: as it spreads, the depth first grows and then is lost, in fast wood first."
                )
            );
        console.WriteLine(
            string.Create(
                CultureInfo.InvariantCulture,
                $"Coefficient {middle:0.0e0} m²/s at {moisture:0} % and {celsius:0} °C; nine woods of ten within a factor of {law.Factor:0.#}. {law.Provenance.Citation} ({law.Provenance.Standing.InWords()})."
            )
        );
        console.WriteLine(
            "Diffusion from one face to the middle plane; corners take more. No published coefficient against moisture was found: cut and spray before relying on it."
        );
        console.WriteLine(
            "Boron does not fix: keep treated wood from rain and running water. The product's label and authorisation decide."
        );
        return CommandLine.Done;

        void Row(string name, IEnumerable<string> cells) => table.AddRow([name, .. cells]);
    }

    private static double[] Factors(BoronLaw law) => [1 / law.Factor, 1, law.Factor];
}
