using Spectre.Console.Cli;

namespace Alburnum.Cli.Bundles;

/// <summary>The commands about cases that are handed over.</summary>
internal static class BundleCommands
{
    public static void AddTo(IConfigurator config) =>
        config.AddBranch(
            "bundle",
            bundle =>
            {
                bundle.SetDescription("Hand a case over as one signed file, or verify one");
                bundle
                    .AddCommand<BundleWriteCommand>("write")
                    .WithDescription("Write a case with its ledger and photographs into one signed file");
                bundle
                    .AddCommand<BundleVerifyCommand>("verify")
                    .WithDescription("Verify such a file; no store is needed");
                bundle
                    .AddCommand<BundleKeyCommand>("key")
                    .WithDescription("Show the practice's public key and its fingerprint");
            }
        );
}
