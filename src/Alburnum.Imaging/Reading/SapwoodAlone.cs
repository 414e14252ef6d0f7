namespace Alburnum.Imaging.Reading;

/// <summary>Sapwood of a section on which no treated wood is seen: nothing was treated, or what it was treated with leaves no colour.</summary>
/// <param name="Faces">Its depth along every face.</param>
/// <param name="Share">Its share of the section's area, 0 to 1.</param>
/// <param name="Heartwood">How its border is known.</param>
public sealed record SapwoodAlone(IReadOnlyList<FaceSapwood> Faces, Estimate Share, HeartwoodReading Heartwood);

/// <summary>Sapwood along one face.</summary>
/// <param name="Number">Number of the face.</param>
/// <param name="StepMm">Distance between positions, mm.</param>
/// <param name="DepthMm">Depth at which heartwood begins, mm: 0 where it lies at the face, null where none is met before the middle of the piece.</param>
public sealed record FaceSapwood(int Number, double StepMm, IReadOnlyList<double?> DepthMm)
{
    /// <summary>Least depth, mm; null where no heartwood is met behind the face.</summary>
    public double? LeastMm => DepthMm.Min();

    /// <summary>Mean depth, mm, of the positions behind which heartwood is met; null likewise.</summary>
    public double? MeanMm => DepthMm.Average();

    /// <summary>Share of the face at which heartwood lies, 0 to 1.</summary>
    public double HeartwoodShare => (double)DepthMm.Count(mm => mm <= 0) / DepthMm.Count;

    /// <summary>Share of the face behind which no heartwood is met, 0 to 1.</summary>
    public double ThroughShare => (double)DepthMm.Count(mm => mm is null) / DepthMm.Count;
}
