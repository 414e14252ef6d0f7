using Alburnum.Facts;
using Alburnum.Impregnation.Diffusing;
using Alburnum.Timber;

namespace Alburnum.Workflows.Impregnation;

/// <summary>A piece with a border of boron, and how long it is stored and lies in the wet.</summary>
public sealed record BoronRequest
{
    /// <summary>Size of the piece.</summary>
    public required Section Section { get; init; }

    /// <summary>Depth of the border just after treatment, mm. 0.1 to where the fronts from all faces meet.</summary>
    public required double BorderMm { get; init; }

    /// <summary>Loading of that border, kg/m³. Above 0.</summary>
    public required double LoadingKgPerM3 { get; init; }

    /// <summary>Loading that counts as reached, kg/m³. Above 0.</summary>
    public required double WantedKgPerM3 { get; init; }

    /// <summary>Moisture while stored, %, within the range of the law.</summary>
    public required double MoisturePercent { get; init; }

    /// <summary>Temperature while stored, °C. 0 to 60.</summary>
    public required double Celsius { get; init; }

    /// <summary>Weeks of storage, wrapped so that nothing leaves. 0 to 520.</summary>
    public required double Weeks { get; init; }

    /// <summary>Days in running water afterwards. 0 to 3650.</summary>
    public required double WetDays { get; init; }
}

/// <summary>Where the boron is, in one kind of wood.</summary>
/// <param name="DepthMm">Depth with the loading wanted after store, mm; 0 where the face itself has less.</param>
/// <param name="MiddleKgPerM3">Loading in the middle after store, kg/m³.</param>
/// <param name="Washed">What running water does afterwards; null where there is none.</param>
public sealed record BoronPlace(double DepthMm, double MiddleKgPerM3, BoronWashed? Washed);

/// <summary>What running water does.</summary>
/// <param name="Share">Share of the boron that it washes out, 0 to 1.</param>
/// <param name="MiddleKgPerM3">Loading in the middle then, kg/m³.</param>
public sealed record BoronWashed(double Share, double MiddleKgPerM3);

/// <summary>How far boron spreads, in slow, middle and fast wood.</summary>
public sealed record BoronSpread
{
    /// <summary>What was asked.</summary>
    public required BoronRequest Asked { get; init; }

    /// <summary>The law that answered.</summary>
    public required BoronLaw Law { get; init; }

    /// <summary>Coefficient in the middle wood, m²/s.</summary>
    public required double M2PerS { get; init; }

    /// <summary>Coefficient in the middle wood while it lies in the wet, m²/s; null where it does not.</summary>
    public required double? SoakedM2PerS { get; init; }

    /// <summary>Loading where the borders under all faces are spread evenly over the piece, kg/m³.</summary>
    public required double EvenKgPerM3 { get; init; }

    /// <summary>The same of what depths are reckoned in: the piece, or a sheet where its shape is taken for one, kg/m³.</summary>
    public required double AsReckonedKgPerM3 { get; init; }

    /// <summary>Slower than all but one wood of twenty.</summary>
    public required BoronPlace Slow { get; init; }

    /// <summary>Half of all wood is slower.</summary>
    public required BoronPlace Middle { get; init; }

    /// <summary>Faster than all but one wood of twenty.</summary>
    public required BoronPlace Fast { get; init; }

    /// <summary>True where the border holds too little for the loading wanted: as it spreads, the depth first grows and then is lost.</summary>
    public bool IsTooThin => EvenKgPerM3 < Asked.WantedKgPerM3;

    /// <summary>True where it would be too little in the sheet that the piece is taken for.</summary>
    public bool IsTooThinAsReckoned => !IsTooThin && AsReckonedKgPerM3 < Asked.WantedKgPerM3;
}

/// <summary>Predicts how far boron spreads from a treated border in damp store, and how much washes out in the wet.</summary>
public static class SpreadBoron
{
    /// <summary>Depths that a border can have, mm: to where the fronts from all faces meet.</summary>
    /// <param name="section">The section.</param>
    public static NumberRange BorderMm(Section section) =>
        Ranges.DepthMm with
        {
            High = SectionBorder.DeepestMm(section),
        };

    /// <summary>Predicts.</summary>
    /// <param name="request">What is asked.</param>
    /// <param name="law">How fast boron spreads.</param>
    public static BoronSpread Run(BoronRequest request, BoronLaw law)
    {
        ArgumentNullException.ThrowIfNull(request);
        ArgumentNullException.ThrowIfNull(law);
        var stored = law.M2PerS(request.MoisturePercent, request.Celsius);
        var soaked = law.M2PerS(law.MostMoisturePercent, request.Celsius);
        var even = request.LoadingKgPerM3 * SectionBorder.Share(request.Section, request.BorderMm);
        return new()
        {
            Asked = request,
            Law = law,
            M2PerS = stored,
            SoakedM2PerS = request.WetDays > 0 ? soaked : null,
            EvenKgPerM3 = even,
            AsReckonedKgPerM3 = SaltSection.IsExact(request.Section)
                ? even
                : request.LoadingKgPerM3 * request.BorderMm / SectionBorder.DeepestMm(request.Section),
            Slow = In(1 / law.Factor),
            Middle = In(1),
            Fast = In(law.Factor),
        };

        BoronPlace In(double factor)
        {
            SaltSection After(SaltSpell? washed) =>
                SaltSection.After(
                    request.Section,
                    request.BorderMm,
                    request.LoadingKgPerM3,
                    new(stored * factor, 7 * request.Weeks),
                    washed
                );
            var dry = After(null);
            var wet = request.WetDays > 0 ? After(new(soaked * factor, request.WetDays)) : null;
            return new(
                dry.FromFace.DepthMm(request.WantedKgPerM3),
                dry.FromFace.Loading[^1],
                wet is null ? null : new(1 - wet.Mean / dry.Mean, wet.FromFace.Loading[^1])
            );
        }
    }
}
