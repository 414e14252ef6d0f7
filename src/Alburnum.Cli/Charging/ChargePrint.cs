using Alburnum.Cli.Impregnation;
using Alburnum.Reports.Impregnation;
using Alburnum.Reports.Words;
using Spectre.Console;
using static Alburnum.Reports.Words.Wording;

namespace Alburnum.Cli.Charging;

/// <summary>The plan and the account of a charge at a glance.</summary>
internal static class ChargePrint
{
    private static ChargeWords Words => ChargeWords.Current;

    public static void Plan(IAnsiConsole console, ChargePlanDocument plan)
    {
        console.WriteLine();
        console.MarkupLineInterpolated($"[bold]{plan.Name}[/]");
        console.WriteLine(
            Words.Planned(plan.PieceCount, plan.VolumeM3, plan.SurfaceM2, plan.Schedule, plan.ScheduleMinutes)
        );
        if (plan.DryingDays is { } days)
            console.WriteLine(Words.TooWet(days));
        console.WriteLine();
        console.Write(Amounts(plan));
        console.WriteLine(Figures.PlusMinus);
        console.WriteLine(
            Words.Balance(plan.SolutionL.Value, plan.SolutionDensityKgPerM3, plan.ProductKg.Value, plan.WaterKg.Value)
        );
        Product(console, plan.Product, plan.ProductNotes);
        Foot(console, plan.Assumptions, plan.Cautions);
    }

    public static void Design(IAnsiConsole console, ChargeDesignDocument design)
    {
        console.WriteLine();
        console.MarkupLineInterpolated($"[bold]{design.Title}[/]");
        foreach (
            var sentence in Words.Required(design.Demand, design.WantedShare, design.RequiredKgPerM3, design.Chance)
        )
            console.WriteLine(sentence);
        var table = new Table().Border(TableBorder.Simple);
        table.AddColumns(
            Said("terminal.schedule"),
            Said("terminal.whole-minutes"),
            Said("terminal.chance-of-depth"),
            ""
        );
        foreach (var trial in design.Tried)
        {
            var name = Markup.Escape(Words.Schedule(trial.Schedule, trial.PressureMinutes));
            table.AddRow(
                trial.Schedule == design.Chosen ? $"[bold]{name}[/]" : name,
                Figures.Number(trial.ScheduleMinutes, 0),
                Figures.Certainty(trial.DepthChance),
                trial is { StrengthPercent: { } strength, SolutionL: { } solution, ProductKg: { } product }
                    ? Words.Cost(strength, solution, product)
                    : trial.NotEnough ?? ""
            );
        }
        console.Write(table);
        console.WriteLine(Figures.PlusMinus);
        console.MarkupLineInterpolated($"[bold]{design.Answer}[/]");
        Foot(console, design.Assumptions, design.Cautions);
    }

    public static void Account(IAnsiConsole console, ChargeAccountDocument account)
    {
        console.WriteLine();
        console.MarkupLineInterpolated($"[bold]{account.Name}[/]");
        console.WriteLine(Words.Treated(account.PieceCount, account.VolumeM3));
        console.WriteLine();
        console.MarkupLineInterpolated($"[bold]{Said("terminal.as-run")}[/]");
        console.WriteLine(Words.NetByTank(account.NetByTankL));
        if (account.NetByWeightL is { } weighed)
            console.WriteLine(Words.NetByWeight(weighed));
        if (account is { GrossL: { } gross, KickbackL: { } kickback })
            console.WriteLine(Words.AtPeak(gross, kickback));
        console.WriteLine(Words.Net(account.NetLPerM3, account.RetentionKgPerM3));
        console.WriteLine(Words.Expectation(account.ExpectedLPerM3, account.AsExpected));
        foreach (var finding in account.Findings)
            console.WriteLine(finding);
        console.WriteLine(Figures.PlusMinus);
        ProductPrint.Budget(console, account.RetentionBudget, account.RetentionKgPerM3.StandardUncertainty);
        if (account.SelectiveShare is { } selective)
            console.WriteLine(
                ProductWords.Current.Selective(
                    selective,
                    account.Product.Min(product => product.SelectiveShare),
                    account.Product.Max(product => product.SelectiveShare)
                )
            );
        Product(console, account.Product, account.ProductNotes);
        Foot(console, account.Assumptions, account.Cautions);
    }

    private static void Product(
        IAnsiConsole console,
        IReadOnlyList<ChargeProductDocument> products,
        IReadOnlyList<string> notes
    ) =>
        ProductPrint.Print(
            console,
            [.. products.Select(product => product.Walls)],
            ProductPrint.Rows(products),
            [.. products.Select(product => product.Bands)],
            notes
        );

    private static Table Amounts(ChargePlanDocument plan)
    {
        var table = new Table().Border(TableBorder.Simple);
        table.AddColumn(Said("terminal.plan"));
        table.AddColumn(new TableColumn("").RightAligned());
        Row(Words.ExpectedUptake(plan.UptakeLPerM3));
        Row(Words.Solution(plan.SolutionL));
        Row(Words.Strength(plan.StrengthPercent));
        Row(Words.Product(plan.ProductKg));
        Row(Words.Water(plan.WaterKg));
        Row(Words.WeightBefore(plan.WeightBeforeKg));
        Row(Words.WeightAfter(plan.WeightAfterKg));
        Row(Words.Cores(plan.CoreShare.Value));
        return table;

        void Row((string Name, string Value) row) => table.AddRow(row.Name, row.Value);
    }

    private static void Foot(IAnsiConsole console, IReadOnlyList<string> assumptions, IReadOnlyList<string> cautions)
    {
        if (assumptions.Count > 0)
            List(Said("terminal.assumed"), assumptions);
        List(Said("sheet.cautions"), cautions);

        void List(string title, IReadOnlyList<string> sentences)
        {
            console.WriteLine();
            console.MarkupLineInterpolated($"[bold]{title}[/]");
            foreach (var sentence in sentences)
                console.WriteLine("  " + sentence);
        }
    }
}
