using Alburnum.Penetration;
using Alburnum.Timber;

namespace Alburnum.Imaging.Reading;

/// <summary>How far a photograph serves its purpose.</summary>
public enum QualityGrade
{
    /// <summary>Nothing to complain of.</summary>
    Good,

    /// <summary>Usable, with the limits named.</summary>
    Fair,

    /// <summary>The reading is to be taken with care; a new photograph is better.</summary>
    Poor,

    /// <summary>Nothing can be read from it.</summary>
    Unusable,
}

/// <summary>The photograph judged: a grade and what led to it.</summary>
/// <param name="Grade">Overall.</param>
/// <param name="Findings">What is amiss; empty where nothing is.</param>
public sealed record Quality(QualityGrade Grade, IReadOnlyList<QualityFinding> Findings)
{
    /// <summary>The same findings under a grade that is no better than a given one.</summary>
    internal Quality AtBest(QualityGrade grade) => this with { Grade = Grade > grade ? Grade : grade };
}

/// <summary>Something amiss with a photograph.</summary>
public abstract record QualityFinding
{
    private protected QualityFinding() { }
}

/// <summary>The section is too small in the picture.</summary>
/// <param name="PxPerMm">Pixels per mm of the section.</param>
public sealed record FewPixels(double PxPerMm) : QualityFinding;

/// <summary>Out of focus, or the camera moved.</summary>
/// <param name="OverMm">Length over which edges are blurred, two standard deviations, mm.</param>
public sealed record Blurred(double OverMm) : QualityFinding;

/// <summary>Too much of the section is burnt out.</summary>
/// <param name="Share">Share of the section, 0 to 1.</param>
public sealed record OverExposed(double Share) : QualityFinding;

/// <summary>The section is nearly black.</summary>
/// <param name="Light">Mean light of the section, 0 to 255.</param>
public sealed record UnderExposed(double Light) : QualityFinding;

/// <summary>Parts of the section are see-through, so that their colours are not those of the wood.</summary>
/// <param name="Share">Share of the section, 0 to 1.</param>
public sealed record SeeThrough(double Share) : QualityFinding;

/// <summary>The colours are weak evidence: no reagent was sprayed.</summary>
/// <param name="Indicator">What was read instead.</param>
public sealed record WeakEvidence(Indicator Indicator) : QualityFinding;

/// <summary>The rim of a round was found by itself, is no circle, and was followed as it is: bark that was left on counts as wood.</summary>
public sealed record RimAsGrown : QualityFinding;

/// <summary>
/// Points that a person gave lie on no edge, and none that is sure lies near them: the depths are measured from where they stand, and decide nothing.
/// </summary>
/// <param name="Corners">Which of them, from 1, in the order in which they were given; empty for a rim.</param>
public sealed record PointsOffEdge(IReadOnlyList<int> Corners) : QualityFinding;

/// <summary>The card beside the section contradicts the size that was named or measured: one of them is wrong, or the card does not lie level with the cut face.</summary>
/// <param name="Shown">The section as large as the card makes it.</param>
/// <param name="Kept">The section as large as it was taken to be.</param>
public sealed record CardDisagrees(Section Shown, Section Kept) : QualityFinding;
