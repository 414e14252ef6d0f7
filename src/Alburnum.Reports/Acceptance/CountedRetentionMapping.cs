using Alburnum.Assaying;
using Alburnum.Reports.Words;

namespace Alburnum.Reports.Acceptance;

/// <summary>From figures counted to their document.</summary>
public static class CountedRetentionMapping
{
    /// <summary>The document.</summary>
    public static CountedRetentionDocument From(CountedRetention counted)
    {
        ArgumentNullException.ThrowIfNull(counted);
        var words = AssayWords.Current;
        var isVolumeKnown = counted.KgPerM3 is not null;
        return new()
        {
            Counted = words.Counted(counted),
            IsBelowDetection = counted.IsBelowDetection,
            Contents =
            [
                .. Content("kg/m³", counted.KgPerM3, 1, counted.IsVolumeUncertaintyKnown),
                .. Content("mg/kg", counted.MgPerKg, 1, counted.IsMassUncertaintyKnown),
                .. Content("% m/m", counted.MgPerKg, 1e-4, counted.IsMassUncertaintyKnown),
                .. Content("g/m²", counted.GPerM2, 1, counted.IsVolumeUncertaintyKnown),
            ],
            LaboratoryKgPerM3 =
                isVolumeKnown && counted.IsLaboratoryUncertaintyKnown ? counted.LaboratoryKgPerM3 : null,
            DensityKgPerM3 = isVolumeKnown && counted.IsDensityUncertaintyKnown ? counted.DensityKgPerM3 : null,
            Steps = [.. words.Steps(counted)],
            Remarks = [.. words.Remarks(counted)],
        };
    }

    private static IEnumerable<ContentDocument> Content(string unit, Estimate? content, double factor, bool isKnown) =>
        content is { } known
            ?
            [
                new()
                {
                    Unit = unit,
                    Value = known.Value * factor,
                    U = isKnown ? known.StandardUncertainty * factor : null,
                },
            ]
            : [];
}
