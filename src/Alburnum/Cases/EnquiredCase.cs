using Alburnum.Acceptance;
using Alburnum.Assaying;
using Alburnum.Requirements;

namespace Alburnum.Cases;

/// <summary>
/// A case as it was put to the technologist, the first of its stages: enquired → required → predicted → measured → judged. Each stage is made from the one before by a pure
/// function and keeps it.
/// </summary>
/// <param name="Reference">The technologist's own reference, unique among the cases.</param>
/// <param name="Title">What the case is about.</param>
/// <param name="Client">Who asked.</param>
/// <param name="SampledOn">Day on which the sections were cut.</param>
/// <param name="Enquiry">What is known of the component.</param>
/// <param name="BatchSize">Pieces in the batch, 1 or more.</param>
/// <param name="Acceptance">How many of the pieces cut may fail.</param>
/// <param name="Assays">Assays of the analytical zone; may be empty.</param>
/// <param name="StatedRetentionKgPerM3">Retention that the contract itself names, kg/m³; null to take the rulebook's.</param>
/// <param name="StatedSapwoodMm">
/// Sapwood depth that the technologist states for every face where a section shows no border, mm; null where none is stated.
/// </param>
public sealed record EnquiredCase(
    string Reference,
    string Title,
    string Client,
    DateOnly SampledOn,
    Enquiry Enquiry,
    int BatchSize,
    AcceptanceRule Acceptance,
    IReadOnlyList<Assay> Assays,
    double? StatedRetentionKgPerM3,
    double? StatedSapwoodMm
)
{
    /// <summary>Day on which the timber was treated; null where nobody said.</summary>
    public DateOnly? TreatedOn { get; init; }

    /// <summary>Day on which the moisture stated in the enquiry was measured; null likewise.</summary>
    public DateOnly? MoistureMeasuredOn { get; init; }

    /// <summary>Standard uncertainty of the sapwood depth as stated, mm, above 0; null where nobody stated one.</summary>
    public double? StatedSapwoodUMm { get; init; }

    /// <summary>The sapwood depth as stated, with the standard uncertainty that is carried, mm; null where none is stated.</summary>
    internal Estimate? StatedSapwood =>
        StatedSapwoodMm is { } depthMm
            ? new(depthMm, StatedSapwoodUMm ?? PieceEvidence.SapwoodToTheMillimetreMm)
            : null;

    /// <summary>How the laboratory's figures became retentions.</summary>
    public AssayBasis AssayBasis { get; init; } = new();

    /// <summary>The case with what a code of practice demands of it.</summary>
    /// <param name="rulebook">The code of practice that governs it.</param>
    /// <param name="known">Rulebooks in which a class that the contract names is looked up, where the code does not know it; and for facts that do not go together where that code is silent.</param>
    public RequiredCase Under(Rulebook rulebook, params IEnumerable<Rulebook> known)
    {
        ArgumentNullException.ThrowIfNull(rulebook);
        var answer = rulebook.Answer(Enquiry);
        IReadOnlyList<Rulebook> all = [.. known];
        return new(this, answer, ContractClass.Of(answer, rulebook, all))
        {
            Discrepancies = Discrepancies.Of(answer, all),
        };
    }
}
