using Alburnum.Acceptance;
using Alburnum.Acceptance.Indexed;
using Alburnum.Acceptance.Variables;
using Alburnum.Reports.Words;
using static Alburnum.Reports.Words.Figures;

namespace Alburnum.Cli.Acceptance;

/// <summary>Makes the sheet of each kind of plan.</summary>
internal static class SampleSheet
{
    private const string OwnMethod = "built from the risks asked for, by exact sums";

    /// <summary>A plan from a standard's tables, with the other reading of the same AQL beside it.</summary>
    public static SampleDocument Indexed(IndexedPlan found, ulong seed)
    {
        var (plan, lot) = (found.Plan, new FiniteLot(found.LotSize));
        var share = 1 - found.AqlPercent / 100;
        List<string> notes = [];
        if (found.IsEveryPieceInspected)
            notes.Add("The table's sample is as large as the lot or larger: every piece is cut.");
        if (found.UsedLetter != found.CodeLetter)
            notes.Add(
                $"Letter {found.CodeLetter} has no plan at this AQL; the arrow leads to letter {found.UsedLetter}, "
                    + "which changes sample size and numbers both."
            );
        if (plan.RejectionNumber > plan.AcceptanceNumber + 1)
            notes.Add(
                $"Reduced inspection: {plan.AcceptanceNumber + 1} to {plan.RejectionNumber - 1} failures accept the lot but end reduced inspection."
            );
        if (found.CountsDefects)
            notes.Add("Above AQL 10 the standard counts defects per hundred pieces, not per cent of failing pieces.");
        List<SampleReading> readings =
        [
            SampleReading.Of($"{Indexed(found)}, this lot", plan, lot, found.LotSize),
            SampleReading.Of(
                $"{Indexed(found)}, {(found.CountsDefects ? "defects (Poisson)" : "process (binomial)")}",
                plan,
                found.StandardSupply,
                found.LotSize
            ),
        ];
        if (share > 0)
        {
            var other = new ShareMustPass(share);
            var mayFail = other.MayFail(plan.SampleSize);
            notes.Add(
                $"\"AQL {Options.Digits(found.AqlPercent)} %\" is also read as \"{ReasonWords.English.Acceptance.Rule(other)}\". Of {plan.SampleSize} pieces "
                    + $"that lets {mayFail} fail where this plan lets {plan.AcceptanceNumber} fail. Passing this plan is not "
                    + $"\"{Percent(share)} compliant\"; the result must name the rule used."
            );
            readings.Add(
                SampleReading.Of(
                    $"{ReasonWords.English.Acceptance.Rule(other)}, this lot",
                    new SingleSamplingPlan(plan.SampleSize, mayFail),
                    lot,
                    found.LotSize
                )
            );
        }
        notes.Add(Outgoing(plan, found.LotSize));
        return new(
            ReasonWords.English.Acceptance.Name(found),
            found.Source.Citation,
            found.Source.Standing.InWords(),
            found.LotSize,
            $"{plan.SampleSize} of {found.LotSize} pieces",
            $"at most {Wording.English.Count("count.failure", plan.AcceptanceNumber)} pass; {plan.RejectionNumber} or more do not",
            plan.SampleSize,
            seed,
            RandomPositions.Draw(found.LotSize, plan.SampleSize, seed),
            readings,
            notes
        );
    }

    /// <summary>A stated number of pieces, of which a share must pass, with the plan indexed at the same figure beside it.</summary>
    /// <param name="rule">The share.</param>
    /// <param name="cut">Pieces to cut.</param>
    /// <param name="lot">Pieces in the lot; null where not known.</param>
    /// <param name="indexed">The plan indexed at what may fail; null where the tables have none for it.</param>
    /// <param name="seed">Seed of the positions.</param>
    public static SampleDocument Share(ShareMustPass rule, int cut, int? lot, IndexedPlan? indexed, ulong seed)
    {
        var sheet = Single(
            new(cut, rule.MayFail(cut)),
            ReasonWords.English.Acceptance.Rule(rule),
            "trade reading; no standard is named",
            Standing.CommonPractice.InWords(),
            lot,
            seed,
            []
        );
        if (indexed is null)
            return sheet;
        return sheet with
        {
            Readings =
            [
                sheet.Readings[0] with
                {
                    Name = $"{ReasonWords.English.Acceptance.Rule(rule)}, this lot",
                },
                SampleReading.Of($"{Indexed(indexed)}, this lot", indexed.Plan, SupplyOf(lot), lot),
            ],
            Notes =
            [
                $"\"AQL {Options.Digits(indexed.AqlPercent)} %\" is also read as the {ReasonWords.English.Acceptance.Name(indexed)}, which cuts {indexed.Plan.SampleSize} pieces "
                    + $"and lets {indexed.Plan.AcceptanceNumber} fail. The two are different rules; the result must name the one used.",
                .. sheet.Notes,
            ],
        };
    }

    /// <summary>The smallest single plan for two risks.</summary>
    public static SampleDocument Smallest(RiskPoints risks, int? lot, ulong seed) =>
        Single(
            PlanDesign.Single(risks, lot),
            $"smallest single plan for {InWords(risks)}",
            OwnMethod,
            Standing.Published.InWords(),
            lot,
            seed,
            []
        );

    /// <summary>A double plan for two risks.</summary>
    public static SampleDocument Double(RiskPoints risks, int? lot, ulong seed)
    {
        var plan = PlanDesign.Double(risks, lot);
        var mean = plan.MeanPiecesCut(risks.AcceptableShare, SupplyOf(lot));
        return Staged(
            plan,
            $"double plan for {InWords(risks)}",
            $"{plan.FirstSample} pieces; {plan.SecondSample} more where the first do not decide",
            $"at most {Wording.English.Count("count.failure", plan.AcceptFirst)} in the first sample pass, {plan.RejectFirst} or more do not; "
                + $"in between, at most {plan.AcceptBoth} in both samples together pass",
            mean,
            risks,
            lot,
            seed
        );
    }

    /// <summary>Wald's plan for two risks.</summary>
    public static SampleDocument Sequential(RiskPoints risks, int? lot, ulong seed)
    {
        var plan = PlanDesign.Sequential(risks, lot);
        var steps = Enumerable
            .Range(1, plan.LastPiece)
            .Where(n =>
                plan.AcceptanceNumber(n) != plan.AcceptanceNumber(n - 1)
                || plan.RejectionNumber(n) != plan.RejectionNumber(n - 1)
            )
            .Select(n => $"{n}: {Number(plan.AcceptanceNumber(n))}/{Number(plan.RejectionNumber(n))}");
        return Staged(
            plan,
            $"sequential plan (Wald) for {InWords(risks)}",
            $"one piece at a time, at most {plan.LastPiece}",
            "after n pieces (n: passes at/fails at): " + string.Join(", ", steps),
            plan.MeanPiecesCut(risks.AcceptableShare, SupplyOf(lot)),
            risks,
            lot,
            seed
        );

        static string Number(int? value) => value is { } number ? Options.Digits(number) : "–";
    }

    /// <summary>A plan by variables for two risks.</summary>
    public static SampleDocument Variables(RiskPoints risks, int? lot, ulong seed)
    {
        var plan = VariablesPlan.For(risks);
        if (lot is { } pieces && plan.SampleSize > pieces)
            throw Options.Refused(
                "--lot",
                Options.Digits(pieces),
                $"at least the {plan.SampleSize} pieces that this plan measures"
            );
        return new(
            $"plan by variables for {InWords(risks)}",
            "exact non-central t for a normal measure with unknown spread",
            Standing.Published.InWords(),
            lot,
            $"{plan.SampleSize} pieces, each measured",
            $"passes where mean − {plan.Factor.ToString("0.000", System.Globalization.CultureInfo.InvariantCulture)} × standard deviation reaches the depth asked for",
            plan.SampleSize,
            lot is null ? null : seed,
            lot is { } all ? RandomPositions.Draw(all, plan.SampleSize, seed) : [],
            [SampleReading.Of("this plan", plan, new SteadyProcess(), null)],
            ["Holds only where the measure is near normal: plot the depths before relying on it."]
        );
    }

    /// <summary>Pieces to cut so that a conforming share is shown.</summary>
    public static SampleDocument Show(double share, double confidence, int failures, int? lot, ulong seed)
    {
        var pieces =
            PlanDesign.PiecesToShow(share, confidence, failures, lot)
            ?? throw Options.Refused(
                "--failures",
                Options.Digits(failures),
                $"fewer: even the whole lot cannot show that {Percent(share)} conform with so many failures"
            );
        var belief = new BetaBinomial(failures, pieces);
        return Single(
            new(pieces, failures),
            $"to show that {Percent(share)} conform, at {Percent(confidence)} confidence, with at most {Wording.English.Count("count.failure", failures)}",
            lot is null ? "exact binomial bound (Clopper–Pearson)" : "exact hypergeometric bound",
            Standing.Published.InWords(),
            lot,
            seed,
            [
                $"The Bayesian reading (Jeffreys' belief before) of such a result: {Percent(confidence)} probable that at least "
                    + $"{Percent(belief.ConformingShareExceeded(confidence))} of the supply conform.",
            ]
        );
    }

    private static SampleDocument Single(
        SingleSamplingPlan plan,
        string name,
        string source,
        string standing,
        int? lot,
        ulong seed,
        IReadOnlyList<string> notes
    ) =>
        new(
            name,
            source,
            standing,
            lot,
            lot is { } of ? $"{plan.SampleSize} of {of} pieces" : $"{plan.SampleSize} pieces",
            $"at most {Wording.English.Count("count.failure", plan.AcceptanceNumber)} pass; {plan.RejectionNumber} or more do not",
            plan.SampleSize,
            lot is null ? null : seed,
            lot is { } pieces ? RandomPositions.Draw(pieces, plan.SampleSize, seed) : [],
            [SampleReading.Of("this plan", plan, SupplyOf(lot), lot)],
            [.. notes, Outgoing(plan, lot)]
        );

    private static SampleDocument Staged(
        SamplingPlan plan,
        string name,
        string cut,
        string passes,
        double mean,
        RiskPoints risks,
        int? lot,
        ulong seed
    ) =>
        new(
            name,
            OwnMethod,
            Standing.Published.InWords(),
            lot,
            cut,
            passes,
            plan.MostPiecesCut,
            lot is null ? null : seed,
            lot is { } pieces ? RandomPositions.DrawInOrder(pieces, plan.MostPiecesCut, seed) : [],
            [SampleReading.Of("this plan", plan, SupplyOf(lot), lot)],
            [
                $"On lots at {Percent(risks.AcceptableShare)} failing it cuts {mean.ToString("0.0", System.Globalization.CultureInfo.InvariantCulture)} pieces on average; "
                    + $"the single plan for the same risks cuts {PlanDesign.Single(risks, lot).SampleSize}.",
                "Cut the pieces in the order given and stop as soon as the plan decides.",
            ]
        );

    private static string Indexed(IndexedPlan found) => $"plan indexed at AQL {Options.Digits(found.AqlPercent)}";

    private static string Outgoing(SingleSamplingPlan plan, int? lot) =>
        $"If rejected lots are sorted piece by piece, at most {Percent(OperatingCharacteristic.OutgoingLimit(plan, lot).Limit)} "
        + "failing pieces go out on average (AOQL).";

    private static Supply SupplyOf(int? lot) => lot is { } pieces ? new FiniteLot(pieces) : new SteadyProcess();

    private static string InWords(RiskPoints risks) =>
        $"accepting {Percent(risks.AcceptableShare)} failing (risk {Percent(risks.ProducerRisk)}) and rejecting "
        + $"{Percent(risks.RejectableShare)} failing (risk {Percent(risks.ConsumerRisk)})";
}
