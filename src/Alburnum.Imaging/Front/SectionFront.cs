using Alburnum.Imaging.Colour;
using Alburnum.Imaging.Geometry;

namespace Alburnum.Imaging.Front;

/// <summary>The front along every face of a section, and what it was read from.</summary>
/// <param name="Plan">The section's faces.</param>
/// <param name="Table">What each colour says.</param>
/// <param name="Strips">The faces unrolled.</param>
/// <param name="Fronts">The front along each.</param>
internal sealed record SectionFront(
    SectionPlan Plan,
    EvidenceTable Table,
    IReadOnlyList<EvidenceStrip> Strips,
    IReadOnlyList<FaceFront> Fronts
);
