using Alburnum.Records;
using Alburnum.Records.Facts;
using Alburnum.Reports.Acceptance;
using Alburnum.Reports.Drawings;
using Alburnum.Workflows.Acceptance;
using Spectre.Console;
using Spectre.Console.Cli;

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
        if (settings.Chart is { } place)
            WholeFile.Examine(place);
        var sheet = SampleMapping.Of(PlanSampling.Plan(Request(context, settings), Facts.Sampling.Tables));
        if (settings.Chart is { } chart)
            await WholeFile.WriteAsync(chart, Svg.Write(CharacteristicDrawing.Of(sheet)), cancellationToken);
        return console.Show(sheet, settings.Json, () => SamplePrint.Print(console, sheet));
    }
}
