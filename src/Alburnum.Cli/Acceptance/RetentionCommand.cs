using System.ComponentModel;
using Alburnum.Assaying;
using Alburnum.Facts;
using Alburnum.Records.Assays;
using Alburnum.Records.Charges;
using Alburnum.Records.Facts;
using Alburnum.Reports.Acceptance;
using Alburnum.Workflows.Acceptance;
using Spectre.Console;
using Spectre.Console.Cli;

namespace Alburnum.Cli.Acceptance;

/// <summary>A laboratory's figures as the retention that is required.</summary>
internal sealed class RetentionCommand(IAnsiConsole console, FactLibrary facts) : Command<RetentionCommand.Settings>
{
    internal sealed class Settings : JsonSettings
    {
        [CommandArgument(0, "<FIGURE>")]
        [Description(
            "Content as the laboratory reports it, such as \"1850 ± 120 (k=2) mg/kg Cu\", \"< 5 mg/kg As\" or \"3.2 ± 0.2 (k=1) kg/m3 B\"; several where the sample was analysed for several substances"
        )]
        public string[] Figures { get; init; } = [];

        [CommandOption("--counted-as <SUBSTANCES>")]
        [HelpOf(typeof(AssayFields), nameof(AssayFields.CountedAs))]
        public string? CountedAs { get; init; }

        [CommandOption("--product <FORMULA>")]
        [HelpOf(typeof(AssayFields), nameof(AssayFields.Product))]
        public string? Product { get; init; }

        [CommandOption("--zone-density <KG_PER_M3>")]
        [HelpOf(typeof(AssayFields), nameof(AssayFields.ZoneDensity))]
        public string? ZoneDensity { get; init; }

        [CommandOption("--species <NAME>")]
        [HelpOf(
            typeof(EnquiryFields),
            nameof(EnquiryFields.Species),
            Note = "its usual density is taken where none is stated"
        )]
        public string? Species { get; init; }

        [CommandOption("--zone-depth <MM>")]
        [HelpOf(typeof(TreatmentFields), nameof(TreatmentFields.ZoneDepth), Note = "for g/m²")]
        public string? ZoneDepth { get; init; }
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var document = CountedRetentionMapping.From(CountRetention.Run(settings.Figures, Basis(settings), facts));
        return console.Show(document, settings.Json, CountedRetentionText.Lines(document));
    }

    private AssayBasis Basis(Settings settings)
    {
        var problems = new List<InputProblem>();
        var fields = new OptionFields(settings, problems);
        var species = fields.Named(EnquiryFields.Species, facts.Species.Find);
        var basis = AssayBasisReader.Read(fields, species, facts);
        return problems.Count == 0 ? basis : throw new InputRefusedException(problems);
    }
}
