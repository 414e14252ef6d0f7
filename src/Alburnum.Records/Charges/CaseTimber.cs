using Alburnum.Cases;
using Alburnum.Facts;
using Alburnum.Requirements;
using Alburnum.Timber;

namespace Alburnum.Records.Charges;

/// <summary>What a case says of its timber already: it need not be written again under <c>prediction</c> or <c>charge</c>, and may not be contradicted there.</summary>
/// <param name="Case">The case.</param>
/// <param name="Required">The case with what is demanded; null where the case cannot be read.</param>
internal sealed record CaseTimber(EnquiredCase Case, RequiredCase? Required)
{
    private Requirement? Requirement => (Required?.Answer as Required)?.Requirement;

    /// <summary>The depth that code and contract demand; null where they demand none.</summary>
    public DepthRule? Demand => Required?.Penetration is { } rule and not NoDepth ? rule : null;

    /// <summary>Depth of the analytical zone, mm; null where neither the rulebook nor the required depth says.</summary>
    public double? ZoneDepthMm => Requirement?.Zone?.DepthMm ?? (Demand as LeastDepth)?.DepthMm;

    /// <summary>Width of the sapwood, mm: of a round piece it is the depth stated at its face.</summary>
    public double? SapwoodMm => Case.Enquiry.Section is RoundSection ? Case.StatedSapwoodMm : null;

    /// <summary>Whether a field may be left out because the case says it.</summary>
    public bool Says(AskedField field) =>
        field == ChargeFields.Name
        || field == TreatmentFields.Species
        || field == TreatmentFields.Section
        || field == TreatmentFields.Moisture && Case.Enquiry.MoisturePercent is not null
        || field == TreatmentFields.Depth && (Required is null || Demand is not null)
        || field == TreatmentFields.Retention && (Required is null || Required.RequiredKgPerM3 is not null);
}
