using Alburnum.Facts;

namespace Alburnum.Acceptance;

/// <summary>How many of the pieces cut may fail. Two readings of one figure are in use in the trade; a verdict names its own.</summary>
public abstract record AcceptanceRule
{
    private protected AcceptanceRule() { }

    /// <summary>Source of the rule where it was taken from a code of practice because nobody asked for one; null where it was asked for.</summary>
    public Provenance? TakenFrom { get; init; }

    /// <summary>Greatest number of failures that accepts.</summary>
    /// <param name="piecesCut">Pieces cut, 1 or more.</param>
    public abstract int MayFail(int piecesCut);

    /// <summary>Pieces that the rule needs to be cut; null where any number will do.</summary>
    public abstract int? PiecesAsked { get; }

    /// <summary>Share of the lot that the rule wants to conform; null where its figure is not a share of pieces.</summary>
    public abstract WantedShare? Wanted { get; }
}

/// <summary>At least a share of the pieces cut must pass, however many are cut.</summary>
public sealed record ShareMustPass : AcceptanceRule
{
    /// <summary>Checks the share.</summary>
    /// <param name="share">Share that must pass, above 0, at most 1.</param>
    public ShareMustPass(double share) => Share = Require.Share(share, Ranges.MustPassPercent);

    /// <summary>The share that passes where an AQL is read as the share that may fail.</summary>
    /// <param name="aqlPercent">The AQL with its source, %. Below 100.</param>
    public static ShareMustPass Of(Fact<double> aqlPercent)
    {
        ArgumentNullException.ThrowIfNull(aqlPercent);
        return new(1 - aqlPercent.Value / 100) { TakenFrom = aqlPercent.Provenance };
    }

    /// <summary>Share that must pass.</summary>
    public double Share { get; }

    /// <summary>AQL that the code of practice has for the pieces, %, with its source; null where it has none, or is not asked.</summary>
    public Fact<double>? CodesAqlPercent { get; init; }

    /// <summary>The code's AQL where the share lets more pieces fail than it does; null otherwise. The small number is for shares that are not exact in binary.</summary>
    public Fact<double>? StricterAqlPercent =>
        CodesAqlPercent is { } aql && Share < 1 - aql.Value / 100 - 1e-9 ? aql : null;

    /// <inheritdoc/>
    public override int? PiecesAsked => null;

    /// <inheritdoc/>
    public override WantedShare? Wanted => new(Share, WantedBy.MustPass);

    /// <inheritdoc/>
    // The small number keeps 25 % of 8 at 2 where the share is not exact in binary.
    public override int MayFail(int piecesCut) => (int)Math.Floor((1 - Share) * piecesCut + 1e-9);
}
