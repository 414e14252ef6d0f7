using System.ComponentModel;
using Alburnum.Records.Bundles;
using Alburnum.Reports.Words;
using Spectre.Console;
using Spectre.Console.Cli;

namespace Alburnum.Cli.Bundles;

/// <summary>Verifies a case that was handed over, without a store.</summary>
internal sealed class BundleVerifyCommand(IAnsiConsole console) : Command<BundleVerifyCommand.Settings>
{
    private const string KeyOption = "--key";

    internal sealed class Settings : CommandSettings
    {
        [CommandArgument(0, "<FILE>")]
        [Description("The file that was handed over")]
        public required string File { get; init; }

        [CommandOption($"{KeyOption} <FINGERPRINT>")]
        [Description("Fingerprint of the practice's key, as the practice gave it to you")]
        public string? Key { get; init; }
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var key = settings.Key is { } given ? Hashes.Of(KeyOption, given) : null;
        var bundle = ReadBundle.Verify(settings.File, key, cancellationToken);
        if (bundle.Ledger.Faults.Count > 0)
            throw new InputRefusedException(bundle.Ledger.Faults);
        foreach (var line in LedgerWords.Current.Verified(bundle, key is not null, KeyOption))
            console.WriteLine(line);
        return CommandLine.Done;
    }
}
