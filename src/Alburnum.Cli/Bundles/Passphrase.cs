using Alburnum.Records;
using Alburnum.Records.Bundles;
using Alburnum.Reports.Words;
using Spectre.Console;
using static Alburnum.Reports.Words.Wording;

namespace Alburnum.Cli.Bundles;

/// <summary>The passphrase of the practice's key. It is never an option's own value: other users of the machine can see those.</summary>
internal static class Passphrase
{
    public const string Option = "--passphrase-file";
    private const string Variable = "ALBURNUM_PASSPHRASE";

    /// <summary>The passphrase: from the file, then the variable, otherwise it is asked for.</summary>
    /// <param name="file">The file; null where none was named.</param>
    /// <param name="isNew">Whether it is for a new key: it is asked for twice then.</param>
    /// <param name="console">Where it is asked for.</param>
    /// <param name="stop">Gives up.</param>
    /// <exception cref="InputRefusedException">There is none, and nobody can be asked.</exception>
    public static async Task<string> OfAsync(string? file, bool isNew, IAnsiConsole console, CancellationToken stop)
    {
        if (file is not null)
            return PlainFile.Text(file, file, "a file whose first line is the passphrase").Split('\n')[0].TrimEnd('\r');
        if (Environment.GetEnvironmentVariable(Variable) is { Length: > 0 } set)
            return set;
        if (!console.Profile.Capabilities.Interactive)
            throw Options.Refused(Option, "nothing", $"a file with the passphrase, or the variable {Variable}");
        if (!isNew)
            return await AskAsync(Said("ledger.passphrase"));
        var first = await AskAsync(
            Said("ledger.passphrase-new", ("least", Figures.Whole(PracticeKey.ShortestPassphrase)))
        );
        return await AskAsync(Said("ledger.passphrase-again")) == first
            ? first
            : throw Options.Refused("passphrase", "two that differ", "the same twice");

        Task<string> AskAsync(string question) =>
            new TextPrompt<string>(Markup.Escape(question)).Secret(mask: null).ShowAsync(console, stop);
    }
}
