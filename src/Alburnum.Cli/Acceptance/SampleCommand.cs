using System.Globalization;
using Alburnum.Records.Facts;
using Alburnum.Reports.Acceptance;
using Alburnum.Reports.Drawings;
using Alburnum.Reports.Json;
using Alburnum.Workflows.Acceptance;
using Spectre.Console;
using Spectre.Console.Cli;
using static Alburnum.Reports.Words.Figures;

namespace Alburnum.Cli.Acceptance;

/// <summary>Says what to cut from a lot, how to pick it and what passes.</summary>
internal abstract class SampleCommand<TSettings>(IAnsiConsole console, FactLibrary facts) : AsyncCommand<TSettings>
    where TSettings : SampleSettings
{
    protected FactLibrary Facts => facts;

    protected abstract SamplingRequest Request(CommandContext context, TSettings settings);

    public override async Task<int> ExecuteAsync(
        CommandContext context,
        TSettings settings,
        CancellationToken cancellationToken
    )
    {
        var sheet = SampleMapping.Of(Planned(Request(context, settings)));
        if (settings.Chart is { } chart)
            await TextFile.WriteAsync(chart, Svg.Write(CharacteristicDrawing.Of(sheet)), cancellationToken);
        if (settings.Json)
            console.Profile.Out.Writer.WriteLine(DocumentJson.Write(sheet));
        else
            SamplePrint.Print(console, sheet);
        return CommandLine.Done;
    }

    private PlannedSample Planned(SamplingRequest request) =>
        (PlanSampling.Plan(request, facts.Sampling.Tables), request) switch
        {
            (PlannedSample planned, _) => planned,
            (LotBelowSample small, _) => throw Options.Refused(
                "--lot",
                Options.Digits(request.Lot ?? 0),
                $"at least the {small.SampleSize} pieces that this plan measures"
            ),
            (CannotBeShown shown, SampleToShow show) => throw Options.Refused(
                "--failures",
                show.Failures.ToString(CultureInfo.InvariantCulture),
                $"fewer: even the whole lot cannot show that {Percent(shown.Share)} conform with so many failures"
            ),
            var (outcome, _) => throw new ArgumentOutOfRangeException(nameof(request), outcome, "Not an outcome."),
        };
}
