using Alburnum.Reports.Words;
using Alburnum.Workflows.Impregnation;

namespace Alburnum.Reports.Impregnation;

/// <summary>How far boron spreads, as it is printed. Fields as in docs/json/boron.md.</summary>
public sealed record BoronDocument
{
    /// <summary>Size of the piece.</summary>
    public required string Section { get; init; }

    /// <summary>Coefficient in the middle wood, m²/s.</summary>
    public required double CoefficientM2PerS { get; init; }

    /// <summary>Loading where the border is spread evenly over the piece.</summary>
    public required double EvenKgPerM3 { get; init; }

    /// <summary>In wood slower than all but a twentieth.</summary>
    public required BoronPlaceDocument Slow { get; init; }

    /// <summary>In the middle wood.</summary>
    public required BoronPlaceDocument Middle { get; init; }

    /// <summary>In wood faster than all but a twentieth.</summary>
    public required BoronPlaceDocument Fast { get; init; }

    /// <summary>What the numbers mean and rest on, one sentence each.</summary>
    public required IReadOnlyList<string> Notes { get; init; }

    /// <summary>What to mind, one sentence each.</summary>
    public required IReadOnlyList<string> Cautions { get; init; }
}

/// <summary>Where the boron is, in one kind of wood.</summary>
public sealed record BoronPlaceDocument
{
    /// <summary>Depth with the loading wanted, after store; 0 where the face itself has less.</summary>
    public required double DepthMm { get; init; }

    /// <summary>Loading in the middle, after store.</summary>
    public required double MiddleKgPerM3 { get; init; }

    /// <summary>Share that running water washes out afterwards, 0 to 1; null without it.</summary>
    public double? WashedOutShare { get; init; }

    /// <summary>Loading in the middle then; null without it.</summary>
    public double? WashedMiddleKgPerM3 { get; init; }
}

/// <summary>Writes down how far boron spreads.</summary>
public static class BoronMapping
{
    /// <summary>The spread as a document.</summary>
    public static BoronDocument Of(BoronSpread spread)
    {
        ArgumentNullException.ThrowIfNull(spread);
        return new()
        {
            Section = spread.Asked.Section.Label,
            CoefficientM2PerS = spread.M2PerS,
            EvenKgPerM3 = spread.EvenKgPerM3,
            Slow = Place(spread.Slow),
            Middle = Place(spread.Middle),
            Fast = Place(spread.Fast),
            Notes = [.. BoronWords.Current.Notes(spread)],
            Cautions = BoronWords.Current.Cautions(spread.Asked.Section),
        };
    }

    private static BoronPlaceDocument Place(BoronPlace place) =>
        new()
        {
            DepthMm = place.DepthMm,
            MiddleKgPerM3 = place.MiddleKgPerM3,
            WashedOutShare = place.Washed?.Share,
            WashedMiddleKgPerM3 = place.Washed?.MiddleKgPerM3,
        };
}
