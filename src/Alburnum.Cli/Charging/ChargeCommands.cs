using Spectre.Console.Cli;

namespace Alburnum.Cli.Charging;

/// <summary>The commands about one charge.</summary>
internal static class ChargeCommands
{
    public static void AddTo(IConfigurator config) =>
        config.AddBranch(
            "charge",
            charge =>
            {
                charge.SetDescription("Plan one charge, and reconcile its readings with the plan");
                charge
                    .AddCommand<ChargePlanCommand>("plan")
                    .WithDescription("Work out the solution, its strength and the weights to expect");
                charge
                    .AddCommand<ChargeDesignCommand>("design")
                    .WithDescription("Find the schedule and strength that reach depth and retention with a chance");
                charge
                    .AddCommand<ChargeReconcileCommand>("reconcile")
                    .WithDescription("Work out what was taken up from the readings, and compare it with the plan");
            }
        );
}
