using Spectre.Console.Cli;

namespace Alburnum.Cli.Ledger;

/// <summary>The commands about the ledger.</summary>
internal static class LedgerCommands
{
    /// <summary>What verifies the ledger, as a person types it.</summary>
    public const string Verify = "alburnum ledger verify";

    public static void AddTo(IConfigurator config) =>
        config.AddBranch(
            "ledger",
            ledger =>
            {
                ledger.SetDescription("Show and verify who did what on a case and when; correct or redact it");
                ledger.AddCommand<LedgerShowCommand>("show").WithDescription("Show what was done on a case");
                ledger
                    .AddCommand<LedgerVerifyCommand>("verify")
                    .WithDescription("Verify that nothing was changed, is missing or stands in another order");
                ledger
                    .AddCommand<LedgerCorrectCommand>("correct")
                    .WithDescription("Enter a correction of an earlier entry");
                ledger
                    .AddCommand<LedgerRedactCommand>("redact")
                    .WithDescription("Remove personal data from a case; the chain stays whole");
            }
        );
}
