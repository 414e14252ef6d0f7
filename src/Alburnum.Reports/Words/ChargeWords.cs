using Alburnum.Impregnation.Charging;
using Alburnum.Records.Charges;
using Alburnum.Workflows.Impregnation;

namespace Alburnum.Reports.Words;

/// <summary>What is said of a charge, in words.</summary>
/// <param name="wording">The language.</param>
public sealed class ChargeWords(Wording wording)
{
    /// <summary>In the language chosen.</summary>
    public static ChargeWords Current => new(Wording.Current);

    /// <summary>What to mind with every charge, one sentence each.</summary>
    public IReadOnlyList<string> Cautions { get; } =
    [
        wording.Say("charge.caution.label"),
        wording.Say("charge.caution.licence"),
        wording.Say("charge.caution.drip"),
        wording.Say("charge.caution.protection"),
        wording.Say("charge.caution.uptake"),
    ];

    /// <summary>What to mind with a plan beside that, one sentence each.</summary>
    /// <param name="planned">The plan.</param>
    public IEnumerable<string> OfPlan(PlannedCharge planned)
    {
        ArgumentNullException.ThrowIfNull(planned);
        var (order, plan) = (planned.Expected.Order, planned.Plan);
        if (order.StrengthMostPercent is null)
            yield return wording.Say(
                "charge.caution.strength-most",
                ("field", ChargeFields.StrengthMost.Key),
                ("strength", Measured(plan.StrengthPercent, "%"))
            );
        if (planned.IsShortOfDepth)
            yield return wording.Say(
                "charge.caution.depth-unmet",
                ("share", Figures.Certainty(planned.Expected.CoreShare.Value, wording))
            );
        if (order.TankL < plan.SolutionL.Value)
            yield return wording.Say(
                "charge.caution.tank-too-small",
                ("tank", Figures.Number(order.TankL.Value, 0)),
                ("solution", Figures.Number(plan.SolutionL.Value, 0))
            );
    }

    /// <summary>That more solution was kept than the timber has room for.</summary>
    /// <param name="roomLPerM3">Its room, L/m³.</param>
    public string BeyondRoom(double roomLPerM3) =>
        wording.Say("charge.beyond-room", ("room", Figures.Number(roomLPerM3, 0)));

    /// <summary>What a drying time rests on.</summary>
    public string Diffusion =>
        wording.Say(
            "charge.diffusion",
            ("diffusion", Figures.Digits(1e10 * DryingTime.SoftwoodDiffusionM2PerS.Value, 1)),
            ("standing", wording.Say(DryingTime.SoftwoodDiffusionM2PerS.Provenance.Standing))
        );

    /// <summary>One sentence for each finding, in their order.</summary>
    public IReadOnlyList<string> Say(IEnumerable<ChargeFinding> findings) => [.. findings.Select(Say)];

    /// <summary>What is planned: the timber and its schedule.</summary>
    /// <param name="pieces">Pieces.</param>
    /// <param name="volumeM3">Volume of the timber, m³.</param>
    /// <param name="surfaceM2">Its lateral surface, m².</param>
    /// <param name="schedule">Name of the schedule.</param>
    /// <param name="minutes">Its length, min.</param>
    public string Planned(int pieces, double volumeM3, double surfaceM2, string schedule, double minutes) =>
        wording.Say(
            "charge.planned",
            ("pieces", wording.Count("count.piece", pieces)),
            ("volume", Figures.Number(volumeM3, 2)),
            ("surface", Figures.Number(surfaceM2, 0)),
            ("schedule", schedule),
            ("minutes", Figures.Number(minutes, 0))
        );

    /// <summary>What the solution kept is made of.</summary>
    /// <param name="solutionL">Solution, L.</param>
    /// <param name="densityKgPerM3">Its density, kg/m³.</param>
    /// <param name="productKg">Product in it, kg.</param>
    /// <param name="waterKg">Water in it, kg.</param>
    public string Balance(double solutionL, double densityKgPerM3, double productKg, double waterKg) =>
        wording.Say(
            "charge.balance",
            ("solution", Figures.Number(solutionL, 0)),
            ("density", Figures.Number(densityKgPerM3, 0)),
            ("product", Figures.Number(productKg, 1)),
            ("water", Figures.Number(waterKg, 1))
        );

    /// <summary>What was treated.</summary>
    /// <param name="pieces">Pieces.</param>
    /// <param name="volumeM3">Volume of the timber, m³.</param>
    public string Treated(int pieces, double volumeM3) =>
        wording.Say(
            "charge.run",
            ("pieces", wording.Count("count.piece", pieces)),
            ("volume", Figures.Number(volumeM3, 2))
        );

    /// <summary>Solution kept by the tank.</summary>
    public string NetByTank(Estimate litres) => wording.Say("charge.net-by-tank", ("net", Measured(litres, "L")));

    /// <summary>Solution kept by weight.</summary>
    public string NetByWeight(Estimate litres) => wording.Say("charge.net-by-weight", ("net", Measured(litres, "L")));

    /// <summary>Solution in the timber at peak pressure, and what it gave back.</summary>
    public string AtPeak(Estimate grossL, Estimate kickbackL) =>
        wording.Say("charge.at-peak", ("gross", Measured(grossL, "L")), ("kickback", Measured(kickbackL, "L")));

    /// <summary>Net uptake, and the product that came with it.</summary>
    public string Net(Estimate litresPerM3, Estimate productKgPerM3) =>
        wording.Say(
            "charge.net",
            ("uptake", Measured(litresPerM3, "L/m³")),
            ("product", Measured(productKgPerM3, "kg/m³"))
        );

    /// <summary>Net uptake that a plan expects: name and value.</summary>
    public (string Name, string Value) ExpectedUptake(Estimate litresPerM3) =>
        (wording.Say("charge.expected-uptake"), Measured(litresPerM3, "L/m³"));

    /// <summary>Solution that the timber is expected to keep, likewise.</summary>
    public (string Name, string Value) Solution(Estimate litres) =>
        (wording.Say("charge.solution"), Measured(litres, "L"));

    /// <summary>Strength of the working solution, likewise.</summary>
    public (string Name, string Value) Strength(Estimate percent) =>
        (wording.Say("charge.strength"), wording.Say("charge.strength-by-mass", ("strength", Measured(percent, ""))));

    /// <summary>Product in the solution kept, likewise.</summary>
    public (string Name, string Value) Product(Estimate kg) => (wording.Say("charge.product"), Measured(kg, "kg"));

    /// <summary>Water in the solution kept, likewise.</summary>
    public (string Name, string Value) Water(Estimate kg) => (wording.Say("charge.water"), Measured(kg, "kg"));

    /// <summary>Weight of the timber before treatment, likewise.</summary>
    public (string Name, string Value) WeightBefore(double kg) =>
        (wording.Say("charge.weight-before"), $"{Figures.Number(kg, 0)} kg");

    /// <summary>Weight expected after it, likewise.</summary>
    public (string Name, string Value) WeightAfter(Estimate kg) =>
        (wording.Say("charge.weight-after"), Measured(kg, "kg"));

    /// <summary>Cores expected to reach the depth, likewise.</summary>
    /// <param name="share">Share of cores, 0 to 1.</param>
    public (string Name, string Value) Cores(double share) =>
        (wording.Say("charge.cores"), Figures.Certainty(share, wording));

    /// <summary>That the timber must dry first.</summary>
    /// <param name="days">Least days.</param>
    public string TooWet(double days) => wording.Say("charge.too-wet", ("days", Figures.Number(days, 0)));

    /// <summary>Whether the uptake is what was expected.</summary>
    /// <param name="expectedLPerM3">Net uptake that was expected, L/m³.</param>
    /// <param name="isAsExpected">Whether it is.</param>
    public string Expectation(Estimate expectedLPerM3, bool isAsExpected)
    {
        var expected = Measured(expectedLPerM3, "L/m³");
        return isAsExpected
            ? wording.Say("charge.within", ("expected", expected))
            : wording.Say("charge.outside", ("expected", expected));
    }

    /// <summary>What a design is of, in one line.</summary>
    public string Title(string name) => wording.Say("charge.design.title", ("name", name));

    /// <summary>What a design must reach, how often, and with which chance.</summary>
    /// <param name="demand">The depth, in words.</param>
    /// <param name="coreShare">Share of cores that must reach it, 0 to 1.</param>
    /// <param name="retentionKgPerM3">Product in the zone, kg/m³.</param>
    /// <param name="chance">Chance that both are met, 0 to 1.</param>
    public IReadOnlyList<string> Required(string demand, double coreShare, double retentionKgPerM3, double chance)
    {
        var said = Figures.Percent(chance, wording);
        return
        [
            wording.Say(
                "charge.design.required",
                ("demand", demand),
                ("share", Figures.Percent(coreShare, wording)),
                ("retention", Figures.KgPerM3(retentionKgPerM3)),
                ("chance", said)
            ),
            wording.Say(
                "charge.design.each",
                ("each", Figures.Percent(ChargeGoal.OfEach(chance), wording)),
                ("chance", said)
            ),
        ];
    }

    /// <summary>The schedule of a trial with its pressure period.</summary>
    public string Schedule(string name, double? pressureMinutes) =>
        pressureMinutes is { } minutes
            ? wording.Say("charge.design.pressed", ("schedule", name), ("minutes", Figures.Number(minutes, 0)))
            : name;

    /// <summary>What a trial costs.</summary>
    /// <param name="strengthPercent">Strength, % of product by mass.</param>
    /// <param name="solutionL">Solution kept, L.</param>
    /// <param name="productKg">Product in it, kg.</param>
    public string Cost(double strengthPercent, Estimate solutionL, Estimate productKg) =>
        wording.Say(
            "charge.design.plan",
            ("strength", Figures.Digits(strengthPercent, 2)),
            ("solution", Measured(solutionL, "L")),
            ("product", Measured(productKg, "kg"))
        );

    /// <summary>What to do.</summary>
    /// <param name="design">The schedules tried.</param>
    /// <param name="isWet">Whether the timber is too wet for treatment, so that drying helps.</param>
    public string Answer(ChargeDesign design, bool isWet)
    {
        ArgumentNullException.ThrowIfNull(design);
        if (design.Chosen is { Plan: { } plan, Schedule.Value: var schedule } chosen)
            return wording.Say(
                "charge.design.chosen",
                (
                    "cost",
                    wording.Say(design.Goal.Least == ChargeCost.Time ? "charge.design.time" : "charge.design.solution")
                ),
                ("schedule", Schedule(schedule.Name, chosen.PressureMinutes)),
                ("minutes", Figures.Number(schedule.Minutes, 0)),
                ("plan", Cost(plan.StrengthPercent.Value, plan.SolutionL, plan.ConcentrateKg))
            );
        var nearest = design.Tried.MaxBy(trial => trial.DepthChance)!;
        return wording.Say(
            "charge.design.none",
            ("schedule", Schedule(nearest.Schedule.Value.Name, nearest.PressureMinutes)),
            ("chance", Figures.Certainty(nearest.DepthChance, wording)),
            ("why", Say(nearest.Shortfall!)),
            ("instead", wording.Say(isWet ? "charge.design.instead-dry" : "charge.design.instead"))
        );
    }

    /// <summary>What to mind with a design.</summary>
    /// <param name="minutes">Pressure periods tried, rising, min.</param>
    public string DesignCaution(IReadOnlyList<double> minutes)
    {
        ArgumentNullException.ThrowIfNull(minutes);
        return wording.Say(
            "charge.design.caution",
            ("least", Figures.Number(minutes[0], 0)),
            ("most", Figures.Number(minutes[^1], 0))
        );
    }

    /// <summary>Why a charge cannot be planned to what is asked, without a full stop.</summary>
    public string Say(ChargeShortfall shortfall) =>
        shortfall switch
        {
            DepthTooSeldom => wording.Say("charge.depth-too-seldom"),
            ZoneTooUncertain { ZoneLPerM3: var zone } => wording.Say(
                "charge.zone-too-uncertain",
                ("zone", Measured(zone, "L/m³"))
            ),
            StrengthTooHigh { NeededPercent: double.PositiveInfinity } => wording.Say("charge.zone-takes-nothing"),
            StrengthTooHigh { NeededPercent: var needed, MostPercent: var most, IsOfLabel: var isOfLabel } =>
                wording.Say(
                    isOfLabel ? "charge.strength-above-label" : "charge.strength-too-high",
                    ("needed", Figures.Digits(needed, 2)),
                    ("most", Figures.Digits(most, 2))
                ),
            _ => throw new ArgumentOutOfRangeException(nameof(shortfall), shortfall, "Not a shortfall."),
        };

    private static string Measured(Estimate value, string unit) =>
        Figures.Measured(value.Value, value.StandardUncertainty, unit);

    private string Say(ChargeFinding finding) =>
        finding switch
        {
            TankAndWeightAgree => wording.Say("charge.agree"),
            TankLostMore { Litres: var litres } => wording.Say(
                "charge.tank-lost-more",
                ("litres", Figures.Number(litres, 0))
            ),
            TimberGainedMore { Litres: var litres } => wording.Say(
                "charge.timber-gained-more",
                ("litres", Figures.Number(litres, 0))
            ),
            NotWeighed => wording.Say("charge.not-weighed"),
            KeptMoreThanAtPeak => wording.Say("charge.kept-more"),
            SolutionLostStrength { Percent: var percent } => wording.Say(
                "charge.lost-strength",
                ("percent", Figures.Number(percent, 0))
            ),
            SolutionGainedStrength { Percent: var percent } => wording.Say(
                "charge.gained-strength",
                ("percent", Figures.Number(percent, 0))
            ),
            _ => throw new ArgumentOutOfRangeException(nameof(finding), finding, "Not a finding."),
        };
}
