using System.ComponentModel;
using Alburnum.Records.Store;
using Alburnum.Reports.Words;
using Spectre.Console;
using Spectre.Console.Cli;

namespace Alburnum.Cli.Ledger;

/// <summary>Verifies the ledger of a store; changes nothing.</summary>
internal sealed class LedgerVerifyCommand(IAnsiConsole console) : AsyncCommand<LedgerVerifyCommand.Settings>
{
    private const string HeadOption = "--head";

    internal sealed class Settings : StoreSettings
    {
        [CommandOption($"{HeadOption} <HASH>")]
        [Description("Hash of what was the last entry once, noted elsewhere: shows whether the end was cut off since")]
        public string? Head { get; init; }
    }

    public override async Task<int> ExecuteAsync(
        CommandContext context,
        Settings settings,
        CancellationToken cancellationToken
    )
    {
        var head = settings.Head is { } given ? Hashes.Of(HeadOption, given) : null;
        var store = await CaseStore.LookAsync(settings.StorePath, console.WriteLine, cancellationToken);
        var findings = await store.VerifyAsync(head, cancellationToken);
        if (findings.Faults.Count > 0)
            throw new InputRefusedException(findings.Faults);
        foreach (var line in LedgerWords.Current.Verified(findings, $"{LedgerCommands.Verify} {HeadOption} HASH"))
            console.WriteLine(line);
        return CommandLine.Done;
    }
}
