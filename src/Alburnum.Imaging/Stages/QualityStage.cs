using Alburnum.Imaging.Judging;
using Alburnum.Imaging.Reading;
using Alburnum.Penetration;

namespace Alburnum.Imaging.Stages;

/// <summary>Third stage: judges the photograph.</summary>
internal static class QualityStage
{
    /// <summary>Grade and findings.</summary>
    public static Quality Judge(Scene scene, FlatSection flat) =>
        PhotographJudge.Of(scene.Photo, flat.Drawn, flat.Plan, flat.Map, flat.PxPerMm);

    /// <summary>Bare wood read without a reagent makes any photograph fair at best.</summary>
    public static Quality WithEvidence(this Quality quality, Indicator indicator) =>
        indicator.IsWeakEvidence
            ? quality.AtBest(QualityGrade.Fair) with
            {
                Findings = [.. quality.Findings, new WeakEvidence(indicator)],
            }
            : quality;
}
