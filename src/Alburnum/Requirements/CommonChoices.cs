namespace Alburnum.Requirements;

/// <summary>Timbers that are commonly sold for a component, treated or as durable heartwood.</summary>
/// <param name="Component">Name of the component.</param>
/// <param name="Where">Names of the codes of the countries concerned, for instance "british"; empty for everywhere.</param>
/// <param name="IsTreated">True where it is sold treated; false where as durable heartwood.</param>
/// <param name="SpeciesNames">Names of the species, the commonest first.</param>
/// <param name="ThicknessMaxMm">Greatest thickness or diameter commonly sold, mm; null where it is not known.</param>
/// <param name="Provenance">Source and standing.</param>
public sealed record CommonTimber(
    string Component,
    IReadOnlyList<string> Where,
    bool IsTreated,
    IReadOnlyList<string> SpeciesNames,
    double? ThicknessMaxMm,
    Provenance Provenance
);

/// <summary>A design that lowers the use class, and the components for which it is commonly open.</summary>
/// <param name="UseClass">The use class then.</param>
/// <param name="Components">Names of the components.</param>
public sealed record CommonDesign(UseClass UseClass, IReadOnlyList<string> Components);

/// <summary>What is commonly chosen for a component: the timbers that are sold for it, and the designs that are open to it.</summary>
/// <param name="Timbers">Timbers by component.</param>
/// <param name="Designs">Designs by use class.</param>
/// <param name="RoundComponents">Names of the components for which round timber is sold.</param>
public sealed record CommonChoices(
    IReadOnlyList<CommonTimber> Timbers,
    IReadOnlyList<CommonDesign> Designs,
    IReadOnlyList<string> RoundComponents
)
{
    /// <summary>Timbers commonly sold for what is enquired about, where that code is in force; empty where none is known.</summary>
    /// <param name="enquiry">What is enquired about.</param>
    /// <param name="rulebookName">Name of the rulebook, for instance "british-2014".</param>
    /// <param name="isTreated">Treated timbers, or durable heartwood.</param>
    public IReadOnlyList<CommonTimber> For(Enquiry enquiry, string rulebookName, bool isTreated)
    {
        ArgumentNullException.ThrowIfNull(enquiry);
        return
        [
            .. Timbers.Where(row =>
                row.IsTreated == isTreated
                && row.Component == enquiry.Component?.Name
                && (row.Where.Count == 0 || IsThere(row, rulebookName))
                && !(enquiry.Section?.ThicknessMm > row.ThicknessMaxMm)
            ),
        ];
    }

    /// <summary>Timbers commonly sold for anything in the country of that code; empty where none is known.</summary>
    /// <param name="rulebookName">Name of the rulebook, for instance "british-2014".</param>
    /// <param name="isTreated">Treated timbers, or durable heartwood.</param>
    public IReadOnlyList<CommonTimber> For(string rulebookName, bool isTreated) =>
        [.. Timbers.Where(row => row.IsTreated == isTreated && IsThere(row, rulebookName))];

    /// <summary>True where it is known what is sold for a component, treated or as durable heartwood, where that code is in force: what is not among it is not sold.</summary>
    /// <param name="component">The component; null where it is not known.</param>
    /// <param name="rulebookName">Name of the rulebook, for instance "british-2014".</param>
    public bool IsKnown(Component? component, string rulebookName) =>
        Timbers.Any(row => row.Component == component?.Name && (row.Where.Count == 0 || IsThere(row, rulebookName)));

    /// <summary>True where round timber is sold for a component, or where the component is not known.</summary>
    public bool IsSoldRound(Component? component) =>
        component is null || RoundComponents.Contains(component.Name, StringComparer.Ordinal);

    /// <summary>True where the design that leads to a use class is commonly open to a component, or where the component is not known.</summary>
    /// <param name="useClass">The use class then.</param>
    /// <param name="component">The component; null where it is not known.</param>
    public bool IsOpen(UseClass useClass, Component? component) =>
        component is null
        || Designs.Any(row =>
            row.UseClass == useClass && row.Components.Contains(component.Name, StringComparer.Ordinal)
        );

    private static bool IsThere(CommonTimber row, string rulebookName) => Rulebook.IsOneOf(row.Where, rulebookName);
}
