using Alburnum.Impregnation.Prediction;

namespace Alburnum.Flow.Pieces;

/// <summary>How deep the front of a section is expected, by which its cells are graded before it is run.</summary>
internal static class ExpectedFront
{
    private const int PerFace = 4;

    // No front stands still in the face: what is less than this share of its way counts as it.
    private const double LeastShare = 1e-3;

    /// <summary>Depth of the front, mm, by single ways: the harmonic mean over the faces, as where it is shallow cells of a given width tell least of it.</summary>
    /// <param name="question">What is asked; cuts are left out.</param>
    /// <param name="factor">Permeability over the median. Above 0.</param>
    public static double Mm(PredictionQuestion question, double factor)
    {
        var front = WayRun.Table(question);
        var places = SectionPositions.Around(question.Section, question.Log, PerFace);
        return places.Count / places.Sum(place => 1 / Math.Max(Depth(place), LeastShare * place.WayMm));

        double Depth(SectionPosition place) =>
            LayeredWay.DepthMm(
                front,
                question.VoidFraction,
                (question.Sapwood.LateralMedianM2 * factor, place.SapwoodMm),
                (question.Heartwood.LateralMedianM2 * factor, place.WayMm)
            );
    }
}
