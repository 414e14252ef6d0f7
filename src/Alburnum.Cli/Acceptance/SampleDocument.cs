using Alburnum.Acceptance;

namespace Alburnum.Cli.Acceptance;

/// <summary>What to cut, how to pick it, what passes, and how surely. Fields as in docs/json/sample.md.</summary>
/// <param name="Plan">The plan's full name.</param>
/// <param name="Source">The standard or method it comes from.</param>
/// <param name="Standing">How far the source may be relied on.</param>
/// <param name="LotSize">Pieces in the lot; absent where none was stated.</param>
/// <param name="Cut">What to cut, in words.</param>
/// <param name="Passes">What passes, in words.</param>
/// <param name="MostPiecesCut">Most pieces that may have to be cut.</param>
/// <param name="Seed">Seed that the positions were drawn with.</param>
/// <param name="Positions">Pieces to cut, counted through the lot as it lies; in the order to cut them where a plan may stop early.</param>
/// <param name="Readings">Operating characteristic of each reading of the plan.</param>
/// <param name="Notes">What the reader should know, one sentence each.</param>
internal sealed record SampleDocument(
    string Plan,
    string Source,
    string Standing,
    int? LotSize,
    string Cut,
    string Passes,
    int MostPiecesCut,
    ulong? Seed,
    IReadOnlyList<int> Positions,
    IReadOnlyList<SampleReading> Readings,
    IReadOnlyList<string> Notes
);

/// <summary>One reading of a plan.</summary>
/// <param name="Name">Which reading.</param>
/// <param name="Landmarks">Failing shares accepted with 95, 50 and 10 %.</param>
/// <param name="Curve">The operating characteristic.</param>
internal sealed record SampleReading(string Name, OcLandmarks Landmarks, IReadOnlyList<OcPoint> Curve)
{
    private const double DrawnUpTo = 0.6;
    private const int Steps = 60;

    /// <summary>Reads a plan; all readings of one sheet are given the same lot, so that their points stand at the same shares.</summary>
    public static SampleReading Of(string name, SamplingPlan plan, Supply supply, int? lot) =>
        new(
            name,
            OperatingCharacteristic.Landmarks(plan, supply),
            OperatingCharacteristic.Curve(plan, supply, Shares(lot))
        );

    /// <summary>Even steps; in a small lot the shares that it can have, piece by piece.</summary>
    private static double[] Shares(int? lot)
    {
        var most = lot is { } pieces && DrawnUpTo * pieces < Steps ? (int)Math.Ceiling(DrawnUpTo * pieces) : Steps;
        return
        [
            .. Enumerable
                .Range(0, most + 1)
                .Select(i => lot is { } of && most < Steps ? (double)i / of : DrawnUpTo * i / Steps),
        ];
    }
}
