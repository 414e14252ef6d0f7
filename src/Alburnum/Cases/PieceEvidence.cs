using Alburnum.Penetration;

namespace Alburnum.Cases;

/// <summary>How a piece was read.</summary>
public enum EvidenceKind
{
    /// <summary>From a photograph of its sprayed cut end.</summary>
    Photograph,

    /// <summary>With a ruler, at some positions.</summary>
    Ruler,
}

/// <summary>What was measured on one piece.</summary>
/// <param name="Piece">Name of the piece.</param>
/// <param name="Kind">How it was read.</param>
/// <param name="Profile">Its depth profile; null where none could be determined.</param>
public sealed record PieceEvidence(string Piece, EvidenceKind Kind, DepthProfile? Profile)
{
    /// <summary>Whether this piece is said to be incised; null where nobody said.</summary>
    public bool? IsIncised { get; init; }

    /// <summary>Whether the depths rest on a nominal size that nobody measured.</summary>
    public bool IsSizeOnTrust { get; init; }

    /// <summary>
    /// Standard uncertainty of a sapwood depth of which none is stated, mm: it is taken to be read to the millimetre, so that it may lie anywhere within half a
    /// millimetre either way (JCGM 100:2008, F.2.2.1). How far the border wanders along a face is not in it.
    /// </summary>
    public static double SapwoodToTheMillimetreMm { get; } = 1 / Math.Sqrt(12);

    /// <summary>Whether the depths are measured from points that lie on no sure edge of the wood, so that they decide nothing.</summary>
    public bool IsOffEdge { get; init; }

    /// <summary>The evidence with a stated sapwood depth at every position where none was seen.</summary>
    internal PieceEvidence WithSapwood(Estimate depthMm) =>
        this with
        {
            Profile = Profile is not { } profile
                ? null
                : profile with
                {
                    Faces =
                    [
                        .. profile.Faces.Select(face =>
                            face with
                            {
                                SapwoodDepthMm = [.. face.SapwoodDepthMm.Select(seen => seen ?? depthMm.Value)],
                                SapwoodUncertaintyMm = face.SapwoodDepthMm.Contains(null)
                                    ? Math.Max(face.SapwoodUncertaintyMm, depthMm.StandardUncertainty)
                                    : face.SapwoodUncertaintyMm,
                            }
                        ),
                    ],
                },
        };
}
