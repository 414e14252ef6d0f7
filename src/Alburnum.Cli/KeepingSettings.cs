using System.ComponentModel;
using Alburnum.Records.Ledger;
using Spectre.Console.Cli;

namespace Alburnum.Cli;

/// <summary>Options of a command that keeps something in the store: where that is, and who does it.</summary>
internal class KeepingSettings : StoreSettings
{
    private const int LongestName = 200;

    [CommandOption("--by <NAME>")]
    [Description(
        "Who does it, for the ledger; if not given, the variable ALBURNUM_BY, then the name of the system's user"
    )]
    public string? By { get; init; }

    /// <summary>Who does it.</summary>
    public Person Person =>
        By is not null ? new(Named("--by", By), PersonKnownBy.Command)
        : Environment.GetEnvironmentVariable("ALBURNUM_BY") is { Length: > 0 } name
            ? new(Named("ALBURNUM_BY", name), PersonKnownBy.Setting)
        : Person.OfSystem;

    private static string Named(string option, string name) =>
        name.Trim() is { Length: > 0 and <= LongestName } given
            ? given
            : throw Options.Refused(
                option,
                name.Trim().Length == 0 ? "nothing" : $"{name.Length} letters",
                $"a name of at most {LongestName}"
            );
}
