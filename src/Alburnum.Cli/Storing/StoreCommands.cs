using Spectre.Console.Cli;

namespace Alburnum.Cli.Storing;

/// <summary>The commands about the case store itself.</summary>
internal static class StoreCommands
{
    public static void AddTo(IConfigurator config) =>
        config.AddBranch(
            "store",
            store =>
            {
                store.SetDescription("Check, back up or restore the case store; delete a case");
                store
                    .AddCommand<StoreCheckCommand>("check")
                    .WithDescription("Check that the store and its photographs are whole");
                store
                    .AddCommand<StoreBackUpCommand>("back-up")
                    .WithDescription("Write the store and its photographs into one file");
                store.AddCommand<StoreRestoreCommand>("restore").WithDescription("Make a store of a back-up");
                store
                    .AddCommand<StoreDeleteCaseCommand>("delete-case")
                    .WithDescription("Delete a client's case; its entries in the ledger stay without their texts");
            }
        );
}
