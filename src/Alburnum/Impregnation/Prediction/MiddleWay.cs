namespace Alburnum.Impregnation.Prediction;

/// <summary>The way in from the middle of the face with most sapwood, to the middle of the piece or to heartwood that lets next to nothing through; cuts left out.</summary>
/// <param name="Law">How permeable the wood along it is.</param>
/// <param name="LengthMm">Where it ends, mm.</param>
/// <param name="VoidFraction">Share of the volume that is cavity.</param>
/// <param name="InwardsTimes">Permeability along it over the mean across the grain.</param>
/// <param name="Narrowing">Share of its breadth that it has lost at its end: none under a flat face; from the face of a round piece it narrows to nothing at the pith.</param>
internal sealed record MiddleWay(
    PermeabilityLaw Law,
    double LengthMm,
    double VoidFraction,
    double InwardsTimes,
    double Narrowing
)
{
    /// <summary>The way in a question's pieces.</summary>
    /// <param name="question">What is asked.</param>
    public static MiddleWay Of(PredictionQuestion question)
    {
        ArgumentNullException.ThrowIfNull(question);
        // An odd number of places has one in the middle of each face; near a corner sapwood is deeper than a core there would find.
        var place = SectionPositions
            .Around(question.Section, question.Log, 1)
            .GroupBy(place => place.Face)
            .Select(face => face.ElementAt(face.Count() / 2))
            .MaxBy(place => place.SapwoodMm);
        var sapwood = place.SapwoodMm;
        var end = question.Section.ThicknessMm / 2;
        var way =
            sapwood > 0
            && sapwood < end
            && LayeredWay.IsClosed(question.Sapwood.LateralMedianM2, question.Heartwood.LateralMedianM2)
                ? sapwood
                : end;
        var law = sapwood > 0 ? question.Sapwood : question.Heartwood;
        return new(
            law,
            way,
            question.VoidFraction,
            law.InwardsTimes(place.RadialShare),
            question.Section.FaceCount == 1 ? way / end : 0
        );
    }

    /// <summary>What it holds in wood of a permeability.</summary>
    /// <param name="table">The table of the solution, or of the product.</param>
    /// <param name="permeabilityM2">Permeability across the grain, the mean of radial and tangential, m². Above 0.</param>
    public WayReading In(FrontTable table, double permeabilityM2) =>
        table.At(InwardsTimes * permeabilityM2, VoidFraction, LengthMm, Narrowing);

    /// <summary>What lies in a band of depth, L per m³ of the band.</summary>
    /// <param name="wood">What the way holds.</param>
    /// <param name="fromMm">Where the band begins, mm.</param>
    /// <param name="toMm">Where it ends, mm; beyond the way's end there is wood, and nothing in it.</param>
    public double LPerM3(WayReading wood, double fromMm, double toMm)
    {
        var kept = wood.KeptWithin(toMm / LengthMm) - wood.KeptWithin(fromMm / LengthMm);
        return 1000 * VoidFraction * kept / (Voids(toMm / LengthMm) - Voids(fromMm / LengthMm));
    }

    private double Voids(double depth) => (depth - Narrowing * depth * depth / 2) / (1 - Narrowing / 2);
}
