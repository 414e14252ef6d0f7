using Alburnum.Records.Bundles;
using Spectre.Console;
using Spectre.Console.Cli;
using static Alburnum.Reports.Words.Wording;

namespace Alburnum.Cli.Bundles;

/// <summary>Shows the public half of the practice's key.</summary>
internal sealed class BundleKeyCommand(IAnsiConsole console) : Command<StoreSettings>
{
    public override int Execute(CommandContext context, StoreSettings settings, CancellationToken cancellationToken)
    {
        if (PracticeKey.PublicOf(settings.StorePath) is not { } key)
            throw new InputRefusedException(
                new InputProblem(
                    settings.StorePath,
                    0,
                    "",
                    "key",
                    "no key beside the store",
                    "one; it is made when the first bundle is written"
                )
            );
        console.WriteLine(key.Pem.TrimEnd());
        console.WriteLine(Said("ledger.key", ("fingerprint", key.Fingerprint)));
        return CommandLine.Done;
    }
}
