using Alburnum.Timber;

namespace Alburnum.Requirements;

/// <summary>How deep treatment usually reaches for one treatability.</summary>
/// <param name="Treatability">Treatability class, 1 to 4.</param>
/// <param name="IsIncised">With incised faces.</param>
/// <param name="AtLeastMm">Depth usually reached, mm; 0 where next to nothing is.</param>
/// <param name="Provenance">Source and standing.</param>
public sealed record ReachRow(int Treatability, bool IsIncised, double AtLeastMm, Provenance Provenance);

/// <summary>Whether a demand is usually met. Orientation for choosing a route, not a prediction.</summary>
public enum ReachVerdict
{
    /// <summary>Usually reached.</summary>
    Likely,

    /// <summary>The catalogue does not know enough of the species.</summary>
    NotKnown,

    /// <summary>Usually not reached.</summary>
    Unlikely,
}

/// <summary>What pressure treatment usually reaches, by treatability and incising.</summary>
/// <param name="Rows">One row for each treatability, with and without incising.</param>
public sealed record UsualReach(IReadOnlyList<ReachRow> Rows)
{
    /// <summary>Whether the depth rule is usually met in the species.</summary>
    /// <param name="rule">The rule.</param>
    /// <param name="species">The timber; null where it is not known.</param>
    /// <param name="isIncised">Whether its faces are incised.</param>
    /// <param name="hasHeartwoodAtFace">Whether heartwood reaches a face; null where that is not known. Where it does not, nothing asked of it is left to meet.</param>
    public ReachVerdict Judge(DepthRule rule, Species? species, bool isIncised, bool? hasHeartwoodAtFace) =>
        rule switch
        {
            NoDepth => ReachVerdict.Likely,
            AllOf all => all.Parts.Max(part => Judge(part, species, isIncised, hasHeartwoodAtFace)),
            AnyOf any => any.Parts.Min(part => Judge(part, species, isIncised, hasHeartwoodAtFace)),
            LeastDepth { Zone: WoodZone.ExposedHeartwood }
            or ShareOfZone { Zone: WoodZone.ExposedHeartwood } when hasHeartwoodAtFace == false => ReachVerdict.Likely,
            LeastDepth { Zone: WoodZone.Sapwood } depth => Depth(
                species?.SapwoodTreatability,
                isIncised,
                depth.DepthMm
            ),
            LeastDepth depth => Depth(species?.HeartwoodTreatability, isIncised, depth.DepthMm),
            // Full sapwood can be counted on only where the sapwood is easy to treat.
            ShareOfZone { Zone: WoodZone.Sapwood } => species?.SapwoodTreatability is { } cell
                ? cell.Value.High == 1
                    ? ReachVerdict.Likely
                    : ReachVerdict.Unlikely
                : ReachVerdict.NotKnown,
            ShareOfZone => ReachVerdict.Unlikely,
            _ => ReachVerdict.NotKnown,
        };

    private ReachVerdict Depth(Fact<ClassRange>? cell, bool isIncised, double demandedMm)
    {
        if (cell is null)
            return ReachVerdict.NotKnown;
        var row = Rows.FirstOrDefault(row => row.Treatability == cell.Value.High && row.IsIncised == isIncised);
        if (row is null)
            return ReachVerdict.NotKnown;
        return row.AtLeastMm >= demandedMm ? ReachVerdict.Likely : ReachVerdict.Unlikely;
    }
}
