using Alburnum.Records.Charges;
using Alburnum.Records.Facts;
using Alburnum.Reports.Impregnation;
using Alburnum.Workflows.Impregnation;
using Spectre.Console;
using Spectre.Console.Cli;

namespace Alburnum.Cli.Charging;

/// <summary>Plans one charge.</summary>
internal sealed class ChargePlanCommand(IAnsiConsole console, FactLibrary facts) : Command<ChargeSettings>
{
    public override int Execute(CommandContext context, ChargeSettings settings, CancellationToken cancellationToken)
    {
        var order = ChargeFile.Read(settings.File, facts);
        var document = ChargeMapping.Of(PlanCharge.Run(order, facts, cancellationToken));
        return console.Show(document, settings.Json, () => ChargePrint.Plan(console, document));
    }
}
