using System.ComponentModel;
using Alburnum.Records.Store;
using Spectre.Console.Cli;

namespace Alburnum.Cli;

/// <summary>Where the case store is: the option, then the variable ALBURNUM_STORE, then the user's data folder.</summary>
internal class StoreSettings : CommandSettings
{
    [CommandOption("--store <FILE>")]
    [Description(
        "Database file of the case store; if not given, the variable ALBURNUM_STORE, then the user's data folder"
    )]
    public string? Store { get; init; }

    public string StorePath =>
        Store
        ?? (
            Environment.GetEnvironmentVariable("ALBURNUM_STORE") is { Length: > 0 } path ? path : CaseStore.UsualPath()
        );
}
