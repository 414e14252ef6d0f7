namespace Alburnum.Penetration;

/// <summary>What a depth profile looks like to somebody who has seen many. It is never certain: what would confirm it is said beside it.</summary>
public abstract record DepthPattern
{
    private protected DepthPattern() { }
}

/// <summary>The sapwood is treated, the heartwood is not: what most codes ask for.</summary>
/// <param name="SapwoodShare">Treated share of the sapwood, 0 to 1.</param>
public sealed record UntreatedHeartwood(double SapwoodShare) : DepthPattern;

/// <summary>Next to nothing on one face, and the borders of its neighbours end squarely at it: a cut through treated wood.</summary>
/// <param name="Face">Number of the face.</param>
/// <param name="OthersMm">Median depth on the other faces, mm.</param>
public sealed record CutThroughBorder(int Face, double OthersMm) : DepthPattern;

/// <summary>Next to nothing on one face, where the borders of its neighbours taper off.</summary>
/// <param name="Face">Number of the face.</param>
/// <param name="OthersMm">Median depth on the other faces, mm.</param>
public sealed record BareFace(int Face, double OthersMm) : DepthPattern;

/// <summary>Next to nothing on two faces, deep on the others.</summary>
/// <param name="First">Number of the one.</param>
/// <param name="Second">Number of the other.</param>
/// <param name="AreOpposite">Whether they lie opposite each other; they meet at an edge otherwise.</param>
/// <param name="OthersMm">Median depth on the other faces, mm.</param>
public sealed record TwoBareFaces(int First, int Second, bool AreOpposite, double OthersMm) : DepthPattern;

/// <summary>Deep on one face, next to nothing on the three others.</summary>
/// <param name="Face">Number of the treated one.</param>
/// <param name="DepthMm">Median depth on it, mm.</param>
public sealed record OneTreatedFace(int Face, double DepthMm) : DepthPattern;

/// <summary>Next to nothing all round: untreated, sprayed with a reagent that does not show this preservative, or not sprayed.</summary>
public sealed record BareAllRound : DepthPattern;

/// <summary>Next to nothing on one face on which heartwood lies open.</summary>
/// <param name="Face">Number of the face.</param>
public sealed record BareHeartwoodFace(int Face) : DepthPattern;

/// <summary>An even border on one face, shallower than on all the others.</summary>
/// <param name="Face">Number of the face.</param>
/// <param name="DepthMm">Median depth on it, mm.</param>
/// <param name="OthersMm">Median depth on the other faces, mm.</param>
public sealed record ShallowFace(int Face, double DepthMm, double OthersMm) : DepthPattern;

/// <summary>A thin, even border all round.</summary>
/// <param name="MeanMm">Mean depth, mm.</param>
public sealed record ThinSkin(double MeanMm) : DepthPattern;

/// <summary>A stretch without colour beside deep ones on the same face, with steep edges; it may run on round a corner.</summary>
/// <param name="Face">Number of the face.</param>
/// <param name="FromMm">Where it begins, distance from the start of the face, mm.</param>
/// <param name="ToMm">Where it ends, mm.</param>
/// <param name="MayBeHeartwood">Whether it may be heartwood at the face, since the border of the heartwood was not seen all along it.</param>
public sealed record BarePatch(int Face, double FromMm, double ToMm, bool MayBeHeartwood) : DepthPattern;

/// <summary>The section is treated all through: perhaps cut within reach of the end grain.</summary>
public sealed record TreatedThroughout : DepthPattern;

/// <summary>
/// The section is treated all through and the heartwood with it, which takes little from a face: the preservative came along the grain from
/// an end, perhaps from there only.
/// </summary>
/// <param name="PastBorderMm">Median of how far the treatment goes past the border of the heartwood, mm.</param>
public sealed record EndGrainOnly(double PastBorderMm) : DepthPattern;
