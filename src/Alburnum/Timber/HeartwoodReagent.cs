namespace Alburnum.Timber;

/// <summary>A reagent that colours heartwood and sapwood of some timbers differently.</summary>
/// <param name="Key">Short name as typed by the user, for instance "pine".</param>
/// <param name="Name">Name for people.</param>
/// <param name="HeartwoodColours">Colours seen on heartwood in even white light, sRGB as 0xRRGGBB. At least one.</param>
/// <param name="SapwoodColours">Colours seen on sapwood, likewise.</param>
/// <param name="Provenance">Where the colours come from.</param>
public sealed record HeartwoodReagent(
    string Key,
    string Name,
    IReadOnlyList<int> HeartwoodColours,
    IReadOnlyList<int> SapwoodColours,
    Provenance Provenance
)
{
    /// <summary>What heartwood looks like, in words.</summary>
    public required string HeartwoodInWords { get; init; }

    /// <summary>What sapwood looks like, in words.</summary>
    public required string SapwoodInWords { get; init; }

    /// <summary>Timbers that it is for, in words.</summary>
    public required string Timbers { get; init; }

    /// <summary>What to mind when it is used, one sentence each.</summary>
    public required IReadOnlyList<string> Cautions { get; init; }
}
