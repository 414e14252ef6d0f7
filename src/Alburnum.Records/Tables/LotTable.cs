using Alburnum.Acceptance.Indexed;
using Alburnum.Facts;
using Alburnum.Records.Facts;

namespace Alburnum.Records.Tables;

/// <summary>
/// Reads a plant's lots, oldest first: <c>lot, pieces, cut, failures</c>, and where they apply <c>reduction_agreed</c>,
/// <c>production_steady</c> and <c>begins_again</c> (yes or no).
/// </summary>
public static class LotTable
{
    private static readonly string[] Columns = ["lot", "pieces", "cut", "failures"];

    private static readonly AskedField ReductionAgreed = AskedField.YesNo(
        "reductionAgreed",
        "Reduced inspection is agreed"
    );

    private static readonly AskedField ProductionSteady = AskedField.YesNo("productionSteady", "Production is steady");

    private static readonly AskedField BeginsAgain = AskedField.YesNo(
        "beginsAgain",
        "Acceptance begins again with this lot"
    );

    private static readonly string[] Optional = [ReductionAgreed.Column, ProductionSteady.Column, BeginsAgain.Column];

    /// <summary>Reads the lots and follows them through the switching rules.</summary>
    /// <param name="table">The table.</param>
    /// <param name="sequence">Tables, switching rules, level and AQL.</param>
    /// <returns>Each lot with the plan in force, what became of it, and where the plant stands after it. One or more.</returns>
    /// <exception cref="InputRefusedException">A row is wrong, or does not fit the plan in force; carries every problem found.</exception>
    public static IReadOnlyList<LotStep> Follow(Table table, LotSequence sequence)
    {
        List<InputProblem> problems = [];
        var first = new Dictionary<string, int>(StringComparer.Ordinal);
        var lots = TableLine.ReadAll(
            table,
            Columns,
            Optional,
            problems,
            line => (line.Line, Lot: Lot(line, first)),
            "lots"
        );
        if (problems.Count > 0)
            throw new InputRefusedException(problems);
        List<LotStep> steps = [];
        var standing = SwitchingState.Beginning;
        foreach (var (line, lot) in lots)
        {
            // What comes after a lot that does not fit cannot be judged: its severity is not known.
            if (sequence.Misfit(standing, lot) is { } misfit)
                throw Refused(misfit, table.Name, line, lot.Number);
            steps.Add(sequence.After(standing, lot));
            standing = steps[^1].After;
        }
        return steps;
    }

    private static InputRefusedException Refused(LotMisfit misfit, string table, int line, string lot)
    {
        var (column, found, expected) = misfit switch
        {
            LotTooSmall small => (
                "pieces",
                $"{small.Pieces}",
                $"{small.Least} or more, the smallest lot of the tables"
            ),
            AcceptanceStopped => (
                BeginsAgain.Column,
                "no",
                "yes, once the cause has been put right: acceptance stopped before this lot, and no lot is judged until then"
            ),
            AcceptanceNotStopped => (BeginsAgain.Column, "yes", "no: acceptance had not stopped before this lot"),
            OtherSampleCut { Plan: var plan } other => (
                "cut",
                $"{other.Cut}",
                $"{plan.Plan.SampleSize}, the sample of {plan.Severity.Key()} inspection, which is in force for this lot"
            ),
            MoreFailuresThanCut more => (
                "failures",
                $"{more.Failures}",
                $"at most the {more.Cut} pieces that were cut"
            ),
            _ => throw new ArgumentOutOfRangeException(nameof(misfit), misfit, "Not a misfit."),
        };
        return new(new InputProblem(table, line, lot, column, found, expected));
    }

    private static SampledLot Lot(TableLine line, Dictionary<string, int> first)
    {
        var fields = new LineFields(line);
        return new(
            line.OwnText("lot", first, "lot"),
            line.Whole("pieces", Ranges.Pieces),
            line.Whole("cut", Ranges.Pieces),
            line.Whole("failures", Ranges.Failures),
            fields.YesNo(ReductionAgreed) ?? false,
            fields.YesNo(ProductionSteady) ?? true,
            fields.YesNo(BeginsAgain) ?? false
        );
    }
}
