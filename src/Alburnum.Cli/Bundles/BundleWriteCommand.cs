using System.ComponentModel;
using Alburnum.Records.Bundles;
using Alburnum.Records.Store;
using Alburnum.Reports.Words;
using Spectre.Console;
using Spectre.Console.Cli;
using static Alburnum.Reports.Words.Wording;

namespace Alburnum.Cli.Bundles;

/// <summary>Writes a case as one signed file.</summary>
internal sealed class BundleWriteCommand(IAnsiConsole console) : AsyncCommand<BundleWriteCommand.Settings>
{
    internal sealed class Settings : StoreSettings
    {
        [CommandArgument(0, "<CASE>")]
        [Description("Number of the case in the store, or its reference where no other case has it")]
        public required string Case { get; init; }

        [CommandArgument(1, "<FILE>")]
        [Description("File to write, a ZIP; one that is there is not overwritten")]
        public required string File { get; init; }

        [CommandOption($"{Passphrase.Option} <FILE>")]
        [Description(
            "File whose first line is the passphrase of the practice's key; if not given, the variable ALBURNUM_PASSPHRASE, then it is asked for"
        )]
        public string? PassphraseFile { get; init; }
    }

    public override async Task<int> ExecuteAsync(
        CommandContext context,
        Settings settings,
        CancellationToken cancellationToken
    )
    {
        WriteBundle.Examine(settings.File);
        var store = await CaseStore.LookAsync(settings.StorePath, console.WriteLine, cancellationToken);
        var number = await store.CaseNumberAsync(settings.Case, cancellationToken);
        var isNew = !PracticeKey.IsThere(settings.StorePath);
        var passphrase = await Passphrase.OfAsync(settings.PassphraseFile, isNew, console, cancellationToken);
        using var key = await PracticeKey.OpenOrMakeAsync(settings.StorePath, passphrase, cancellationToken);
        if (isNew)
            console.WriteLine(Said("ledger.key-made"));
        var written = await WriteBundle.RunAsync(
            settings.StorePath,
            number,
            settings.File,
            key,
            console.WriteLine,
            cancellationToken
        );
        console.WriteLine(
            Said(
                "ledger.bundle-written",
                ("file", settings.File),
                ("case", Figures.Whole(number)),
                ("entries", Figures.Whole(written.Entries)),
                ("files", Figures.Whole(written.Files)),
                ("head", written.Head)
            )
        );
        console.WriteLine(Said("ledger.key", ("fingerprint", written.Fingerprint)));
        return CommandLine.Done;
    }
}
