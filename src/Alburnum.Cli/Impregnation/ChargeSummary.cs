using System.Globalization;
using Alburnum.Reports.Impregnation;
using Alburnum.Reports.Words;
using Spectre.Console;

namespace Alburnum.Cli.Impregnation;

/// <summary>A charge at a glance: the plan, then the account where there is one.</summary>
internal static class ChargeSummary
{
    public static void Print(IAnsiConsole console, ChargeDocument document)
    {
        var plan = document.Plan;
        console.WriteLine();
        console.MarkupLineInterpolated($"[bold]{document.Name}[/]");
        Line(
            $"{document.PieceCount} pieces, {document.VolumeM3:0.00} m³, {document.SurfaceM2:0} m² of lateral surface; schedule \"{document.Schedule}\", {document.ScheduleMinutes:0} min."
        );
        if (document.DryingDays is { } days)
            Line(
                $"Too wet to treat: dry for at least {days:0} days first (a least time, by diffusion alone), then measure again."
            );
        console.WriteLine();
        var table = new Table().Border(TableBorder.Simple);
        table.AddColumn("Plan");
        table.AddColumn(new TableColumn("").RightAligned());
        Row("Expected net uptake", plan.Question.UptakeLPerM3, "L/m³");
        Row("Solution kept", plan.SolutionL, "L");
        Row("Strength of the solution", plan.StrengthPercent, "% by mass");
        Row("Product in it", plan.ConcentrateKg, "kg");
        Row("Water in it", plan.WaterKg, "kg");
        table.AddRow("Weight before", $"{Figures.Number(plan.WeightBeforeKg, 0)} kg");
        Row("Weight expected after", plan.WeightAfterKg, "kg");
        table.AddRow("Cores expected to reach the depth", Figures.WholePercent(document.CoreShare.Value));
        console.Write(table);
        Line(
            $"Balance: {plan.SolutionL.Value:0} L of solution at {plan.Question.SolutionDensityKgPerM3:0} kg/m³ = {plan.ConcentrateKg.Value:0.0} kg product + {plan.WaterKg.Value:0.0} kg water."
        );
        if (document.Account is { } account)
        {
            console.WriteLine();
            console.MarkupLine("[bold]As run[/]");
            Line(
                $"Net by the tank {Figures.Measured(account.NetByTankL.Value, account.NetByTankL.StandardUncertainty, "L")}."
            );
            if (account.NetByWeightL is { } weighed)
                Line($"Net by weight {Figures.Measured(weighed.Value, weighed.StandardUncertainty, "L")}.");
            if (account.GrossL is { } gross && account.KickbackL is { } kickback)
                Line(
                    $"At peak pressure {Figures.Measured(gross.Value, gross.StandardUncertainty, "L")}; given back {Figures.Measured(kickback.Value, kickback.StandardUncertainty, "L")}."
                );
            Line(
                $"Net uptake {Figures.Measured(account.NetLPerM3.Value, account.NetLPerM3.StandardUncertainty, "L/m³")}; product {Figures.Measured(account.RetentionKgPerM3.Value, account.RetentionKgPerM3.StandardUncertainty, "kg/m³")} of timber."
            );
            var expected = plan.Question.UptakeLPerM3;
            var off = (account.NetLPerM3.Value - expected.Value) / Math.Max(1e-9, expected.StandardUncertainty);
            Line(
                $"The plan expected {Figures.Measured(expected.Value, expected.StandardUncertainty, "L/m³")}: {(Math.Abs(off) <= 2 ? "within" : "outside")} its uncertainty."
            );
            foreach (var sentence in account.Explanations)
                console.WriteLine(sentence);
        }
        if (document.Assumptions.Count > 0)
        {
            console.WriteLine();
            console.MarkupLine("[bold]Assumed[/]");
            foreach (var assumption in document.Assumptions)
                console.WriteLine("  " + assumption);
        }
        console.WriteLine();
        console.MarkupLine("[bold]Mind[/]");
        foreach (var caution in document.Cautions)
            console.WriteLine("  " + caution);

        void Row(string name, Estimate value, string unit) =>
            table.AddRow(name, Figures.Measured(value.Value, value.StandardUncertainty, unit));

        void Line(FormattableString text) => console.WriteLine(text.ToString(CultureInfo.InvariantCulture));
    }
}
