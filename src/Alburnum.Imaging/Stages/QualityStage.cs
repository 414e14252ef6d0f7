using Alburnum.Imaging.Judging;
using Alburnum.Imaging.Outcomes;
using Alburnum.Imaging.Reading;
using Alburnum.Penetration;

namespace Alburnum.Imaging.Stages;

/// <summary>A section drawn flat from a photograph that is good enough to read.</summary>
/// <param name="Flat">The section.</param>
/// <param name="Quality">How good the photograph is.</param>
internal sealed record JudgedSection(FlatSection Flat, Quality Quality);

/// <summary>Third stage: judges the photograph.</summary>
internal static class QualityStage
{
    /// <summary>Grade and findings, where anything can be read at all.</summary>
    public static Outcome<JudgedSection, NotDetermined> Judge(Scene scene, FlatSection flat)
    {
        var quality = PhotographJudge.Of(scene.Photo, flat.Drawn, flat.Plan, flat.Map, flat.PxPerMm);
        if (quality.Grade == QualityGrade.Unusable)
            return flat.Ended(ReadingStage.Quality, new TooLittleShown(), quality, scene.Request.Indicator);
        var outline = flat.Located.Outline;
        var isAsGrown = scene.Request.OutlinePx is null && outline.Rim is { IsNearlyEllipse: false };
        return new JudgedSection(flat, quality.Spoilt(flat.Known.Card).Spoilt(outline.OffEdge).WithRim(isAsGrown));
    }

    // Nobody said that no bark was left on.
    private static Quality WithRim(this Quality quality, bool isAsGrown) =>
        isAsGrown
            ? quality.AtBest(QualityGrade.Fair) with
            {
                Findings = [.. quality.Findings, new RimAsGrown()],
            }
            : quality;

    // Depths from points that lie on no edge, or to a scale that is contradicted, are poor, however good the photograph.
    private static Quality Spoilt(this Quality quality, QualityFinding? by) =>
        by is null ? quality : quality.AtBest(QualityGrade.Poor) with { Findings = [by, .. quality.Findings] };

    /// <summary>Bare wood read without a reagent makes any photograph fair at best.</summary>
    public static Quality WithEvidence(this Quality quality, Indicator indicator) =>
        indicator.IsWeakEvidence
            ? quality.AtBest(QualityGrade.Fair) with
            {
                Findings = [.. quality.Findings, new WeakEvidence(indicator)],
            }
            : quality;
}
