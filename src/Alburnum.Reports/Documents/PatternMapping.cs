using System.Text.Json;
using Alburnum.Imaging.Reading;
using Alburnum.Penetration;
using Alburnum.Reports.Words;

namespace Alburnum.Reports.Documents;

/// <summary>From what a section looks like to its document.</summary>
internal static class PatternMapping
{
    /// <summary>The patterns of a reading.</summary>
    /// <param name="reading">The reading.</param>
    /// <param name="profile">Its profile, in which a stated sapwood depth may be filled in; null where none was read.</param>
    public static IReadOnlyList<PatternDocument> Of(SectionReading reading, DepthProfile? profile) =>
        [
            .. (reading.Outcome, profile) switch
            {
                (_, { } read) => Of(read),
                (NotDetermined { Fault: NoFront { IsTreated: { } isTreated } }, _) =>
                [
                    From(isTreated ? new TreatedThroughout() : new BareAllRound()),
                ],
                _ => [],
            },
        ];

    /// <summary>The patterns of a profile, however it was read.</summary>
    public static IReadOnlyList<PatternDocument> Of(DepthProfile profile) =>
        [.. DepthPatterns.Of(profile).Select(From)];

    private static PatternDocument From(DepthPattern pattern) =>
        new()
        {
            Kind = JsonNamingPolicy.SnakeCaseLower.ConvertName(pattern.GetType().Name),
            LooksLike = PatternWords.Current.LooksLike(pattern),
            WouldConfirm = PatternWords.Current.WouldConfirm(pattern),
            Letter = Letter(pattern),
        };

    /// <summary>Key, in data/letters.yaml, of the letter that a pattern answers; null where there is none.</summary>
    internal static string? Letter(DepthPattern pattern) =>
        pattern switch
        {
            UntreatedHeartwood or BareHeartwoodFace => "red-core",
            CutThroughBorder or ShallowFace or BareFace or TwoBareFaces => "worked-after",
            ThinSkin => "green-skin",
            _ => null,
        };
}
