using Alburnum.Acceptance;
using Alburnum.Acceptance.Indexed;
using Alburnum.Records.Facts;

namespace Alburnum.Workflows.Acceptance;

/// <summary>How many of the pieces cut may fail, as it is asked.</summary>
public abstract record AskedRule;

/// <summary>A share of the pieces cut must pass.</summary>
/// <param name="Share">The share, 0.01 to 1.</param>
/// <param name="CodesAqlPercent">AQL of the code of practice for the timber, %, with its source; null where it has none, or no code is named.</param>
public sealed record AskedShare(double Share, Fact<double>? CodesAqlPercent) : AskedRule;

/// <summary>The share that passes where the AQL of a code of practice is read as the share that may fail.</summary>
/// <param name="AqlPercent">The AQL with its source, %.</param>
public sealed record AskedCode(Fact<double> AqlPercent) : AskedRule;

/// <summary>The plan of a standard's tables.</summary>
/// <param name="AqlPercent">AQL that indexes it, %.</param>
/// <param name="Level">Inspection level.</param>
/// <param name="Severity">Normal, tightened or reduced.</param>
public sealed record AskedPlan(double AqlPercent, InspectionLevel Level, Severity Severity) : AskedRule;

/// <summary>What is asked of a batch whose pieces are counted, before it is held against the tables and the pieces cut.</summary>
public sealed record CountingQuestion
{
    /// <summary>Pieces in the batch; null where not stated.</summary>
    public int? Lot { get; init; }

    /// <summary>How many may fail.</summary>
    public required AskedRule Rule { get; init; }

    /// <summary>Composite assays.</summary>
    public IReadOnlyList<Assay> Assays { get; init; } = [];

    /// <summary>Required retention, kg/m³; null where none is.</summary>
    public double? RequiredKgPerM3 { get; init; }

    /// <summary>Confidence of the bound on the conforming share.</summary>
    public double Confidence { get; init; } = 0.95;

    /// <summary>Share of the lot that is wanted to conform; null to take what the rule wants.</summary>
    public double? WantedShare { get; init; }

    /// <summary>What says how many were cut, for messages: the table, or the option.</summary>
    public required string CutSource { get; init; }

    /// <summary>What a batch is judged by of which so many pieces were cut.</summary>
    /// <param name="cut">Pieces cut, 1 or more.</param>
    /// <param name="facts">The standard's tables.</param>
    /// <exception cref="InputRefusedException">The tables have no such plan, the batch is smaller than the sample, or the sample larger than the plan's.</exception>
    public CountingRequest Of(int cut, FactLibrary facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        var (rule, other) = Rules(facts);
        if (Lot < cut)
            throw AcceptanceFields.Lot.Refused(
                file: null,
                $"{Lot}",
                $"at least the {cut} pieces that were cut from it"
            );
        if (rule.PiecesAsked < cut)
            throw new InputRefusedException(
                new InputProblem(
                    CutSource,
                    0,
                    "",
                    "",
                    $"{cut} pieces",
                    $"at most the {rule.PiecesAsked} that the plan asks for; a plan says nothing about a larger sample"
                )
            );
        return new()
        {
            Lot = Lot,
            Rule = rule,
            OtherRule = other,
            Assays = Assays,
            RequiredKgPerM3 = RequiredKgPerM3,
            Confidence = Confidence,
            WantedShare = WantedShare,
        };
    }

    /// <summary>The rule to use, and the other reading of the same figure where there is one.</summary>
    private (AcceptanceRule Rule, AcceptanceRule? Other) Rules(FactLibrary facts)
    {
        switch (Rule)
        {
            case AskedShare share:
                return (new ShareMustPass(share.Share) { CodesAqlPercent = share.CodesAqlPercent }, null);
            case AskedCode code:
                return (ShareMustPass.Of(code.AqlPercent), null);
            case AskedPlan plan:
                var tables = facts.Sampling.Tables;
                var lot =
                    Lot ?? throw AcceptanceFields.Lot.Refused(file: null, "nothing", AcceptanceFields.Lot.Expected);
                var found = TablesFit.Plan(tables, lot, plan.Level, plan.AqlPercent, plan.Severity);
                return (new IndexedSampling(found), PlanSampling.SameFigure(found));
            default:
                throw new InvalidOperationException($"Not a rule: {Rule}.");
        }
    }
}
