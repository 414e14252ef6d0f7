using Alburnum.Reports.Impregnation;
using Alburnum.Reports.Words;
using Spectre.Console;

namespace Alburnum.Cli.Charging;

/// <summary>The plan and the account of a charge at a glance.</summary>
internal static class ChargePrint
{
    public static void Plan(IAnsiConsole console, ChargePlanDocument plan)
    {
        console.WriteLine();
        console.MarkupLineInterpolated($"[bold]{plan.Name}[/]");
        console.WriteLine(
            $"{plan.PieceCount} pieces, {Figures.Number(plan.VolumeM3, 2)} m³, {Figures.Number(plan.SurfaceM2, 0)} m² of lateral surface; schedule \"{plan.Schedule}\", {Figures.Number(plan.ScheduleMinutes, 0)} min."
        );
        if (plan.DryingDays is { } days)
            console.WriteLine(ChargeWords.English.TooWet(days));
        console.WriteLine();
        console.Write(Amounts(plan));
        console.WriteLine(
            $"Balance: {Figures.Number(plan.SolutionL.Value, 0)} L of solution at {Figures.Number(plan.SolutionDensityKgPerM3, 0)} kg/m³ = {Figures.Number(plan.ProductKg.Value, 1)} kg product + {Figures.Number(plan.WaterKg.Value, 1)} kg water."
        );
        Foot(console, plan.Assumptions, plan.Cautions);
    }

    public static void Account(IAnsiConsole console, ChargeAccountDocument account)
    {
        console.WriteLine();
        console.MarkupLineInterpolated($"[bold]{account.Name}[/]");
        console.WriteLine($"{account.PieceCount} pieces, {Figures.Number(account.VolumeM3, 2)} m³.");
        console.WriteLine();
        console.MarkupLine("[bold]As run[/]");
        console.WriteLine($"Net by tank {Said(account.NetByTankL, "L")}.");
        if (account.NetByWeightL is { } weighed)
            console.WriteLine($"Net by weight {Said(weighed, "L")}.");
        if (account is { GrossL: { } gross, KickbackL: { } kickback })
            console.WriteLine($"At peak pressure {Said(gross, "L")}; given back {Said(kickback, "L")}.");
        console.WriteLine(
            $"Net uptake {Said(account.NetLPerM3, "L/m³")}; product {Said(account.RetentionKgPerM3, "kg/m³")} of timber."
        );
        console.WriteLine(ChargeWords.English.Expectation(account.ExpectedLPerM3, account.AsExpected));
        foreach (var finding in account.Findings)
            console.WriteLine(finding);
        Foot(console, account.Assumptions, account.Cautions);
    }

    private static Table Amounts(ChargePlanDocument plan)
    {
        var table = new Table().Border(TableBorder.Simple);
        table.AddColumn("Plan");
        table.AddColumn(new TableColumn("").RightAligned());
        table.AddRow("Expected net uptake", Said(plan.UptakeLPerM3, "L/m³"));
        table.AddRow("Solution kept", Said(plan.SolutionL, "L"));
        table.AddRow("Strength of the solution", Said(plan.StrengthPercent, "% by mass"));
        table.AddRow("Product in it", Said(plan.ProductKg, "kg"));
        table.AddRow("Water in it", Said(plan.WaterKg, "kg"));
        table.AddRow("Weight before", $"{Figures.Number(plan.WeightBeforeKg, 0)} kg");
        table.AddRow("Weight expected after", Said(plan.WeightAfterKg, "kg"));
        table.AddRow("Cores expected to reach the depth", Figures.WholePercent(plan.CoreShare.Value));
        return table;
    }

    private static void Foot(IAnsiConsole console, IReadOnlyList<string> assumptions, IReadOnlyList<string> cautions)
    {
        if (assumptions.Count > 0)
            List("Assumed", assumptions);
        List("Cautions", cautions);

        void List(string title, IReadOnlyList<string> sentences)
        {
            console.WriteLine();
            console.MarkupLineInterpolated($"[bold]{title}[/]");
            foreach (var sentence in sentences)
                console.WriteLine("  " + sentence);
        }
    }

    private static string Said(Estimate value, string unit) =>
        Figures.Measured(value.Value, value.StandardUncertainty, unit);
}
