using System.ComponentModel;
using Alburnum.Facts;
using Alburnum.Impregnation.Charging;
using Alburnum.Records.Charges;
using Alburnum.Records.Facts;
using Alburnum.Reports.Impregnation;
using Alburnum.Workflows.Impregnation;
using Spectre.Console;
using Spectre.Console.Cli;
using static Alburnum.Reports.Words.Wording;

namespace Alburnum.Cli.Charging;

/// <summary>Looks for the schedule and strength that meet depth and retention with a stated chance at least cost.</summary>
internal sealed class ChargeDesignCommand(IAnsiConsole console, FactLibrary facts)
    : AsyncCommand<ChargeDesignCommand.Settings>
{
    private const string Time = "time";
    private const string Solution = "solution";

    internal sealed class Settings : JsonSettings
    {
        [CommandArgument(0, "<FILE>")]
        [Description("Charge file (docs/how-to/plan-a-charge.md); its schedule is not used")]
        public required string File { get; init; }

        [CommandOption("--share <PERCENT>")]
        [Description("Share of cores that must reach the depth, %")]
        [DefaultValue(90.0)]
        public double SharePercent { get; init; }

        [CommandOption("--chance <PERCENT>")]
        [Description("Chance with which depth and retention must both be met, %")]
        [DefaultValue(90.0)]
        public double ChancePercent { get; init; }

        [CommandOption("--least <COST>")]
        [Description("What it should cost least of (time, solution)")]
        [DefaultValue(Time)]
        public string Least { get; init; } = Time;

        [CommandOption("--schedules <FILE>")]
        [Description("The plant's own schedules, in the form of data/impregnation/schedules.yaml")]
        public string? SchedulesFile { get; init; }
    }

    public override async Task<int> ExecuteAsync(
        CommandContext context,
        Settings settings,
        CancellationToken cancellationToken
    )
    {
        var goal = new ChargeGoal(
            Options.Number("--share", settings.SharePercent, Ranges.MustPassPercent) / 100,
            Options.Number("--chance", settings.ChancePercent, Ranges.DesignChancePercent) / 100,
            settings.Least switch
            {
                Time => ChargeCost.Time,
                Solution => ChargeCost.Solution,
                var other => throw Options.Refused("--least", other, $"{Time} or {Solution}"),
            }
        );
        var schedules = settings.SchedulesFile is { } file ? facts.ReadSchedules(file) : null;
        var order = ChargeFile.Read(settings.File, facts);
        var document = ChargeDesignMapping.Of(
            await Progress.RunAsync(
                console,
                Said("terminal.trying-schedules"),
                progress => DesignCharge.Run(order, goal, schedules, facts, progress, cancellationToken),
                cancellationToken
            )
        );
        return console.Show(document, settings.Json, () => ChargePrint.Design(console, document));
    }
}
