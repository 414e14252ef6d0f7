using Alburnum.Reports.Documents;

namespace Alburnum.Reports.Tests;

/// <summary>A small whole document for tests that need one.</summary>
internal static class SampleDocument
{
    public static CaseDocument Conforming => Make("conforms", 0.99);

    public static CaseDocument Make(string verdict, double? probability) =>
        new(
            CaseDocument.FormatName,
            CaseDocument.FormatVersion,
            "Alburnum 0.1.0",
            "T-1",
            "Gate posts & rails",
            "Thornhollow estate",
            new DateOnly(2026, 5, 12),
            new DateTime(2026, 5, 13, 9, 30, 0, DateTimeKind.Utc),
            new(
                "fence post",
                "100 × 75 mm",
                "sawn",
                "Scots pine",
                "Pinus sylvestris",
                "4",
                "in the ground",
                15,
                false,
                "no",
                null
            ),
            new(
                "An invented code",
                "required",
                "",
                "NP3",
                "at least 6 mm in the sapwood",
                6,
                "6 mm lateral",
                6,
                1,
                8,
                28,
                ["Retreat cut ends."],
                [new("row-1", "use class: 4 → NP3", true, "applies", "from memory", "Invented, 1")]
            ),
            new(120, 2, "75 % of the pieces cut must pass", 0.4, new(verdict, probability, ["One reason."])),
            [
                new("P01", "ruler", Reading(9), new("conforms", 0.99, ["Deep enough."])),
                new("P02", "ruler", Unread, new("undecided", null, ["Out of focus."])),
            ],
            new(8, [new("composite", 8.9, 0.3, null), new("second", null, null, 0.2)], new("conforms", 0.98, [])),
            new(verdict, probability, ["The batch is as it is."]),
            "from memory",
            ["Invented, 1 (from memory)"],
            ["Treated wood is hazardous when burnt."]
        );

    public static ReadingDocument Reading(double depthMm) =>
        Unread with
        {
            Faces = [.. new[] { 100.0, 75, 100, 75 }.Select((length, i) => Face(i + 1, length, depthMm))],
            Depth = new(depthMm, 0.2, depthMm, 0.2, depthMm, 0.1, depthMm, 0.1, depthMm, 0.2),
            TreatedShare = 0.5,
        };

    public static ReadingDocument Unread { get; } =
        new(
            null,
            null,
            "rectangle",
            [100, 75],
            null,
            null,
            null,
            null,
            null,
            null,
            [],
            null,
            null,
            null,
            null,
            "good",
            []
        );

    private static FaceDocument Face(int number, double lengthMm, double depthMm)
    {
        var positions = Enumerable.Range(0, (int)lengthMm).Select(i => i + 0.5).ToList();
        bool IsCorner(double at) => at < depthMm || at > lengthMm - depthMm;
        return new(
            number,
            1,
            positions,
            [.. positions.Select(_ => depthMm)],
            [.. positions.Select(_ => 0.2)],
            [.. positions.Select(IsCorner)],
            [.. positions.Select(_ => (double?)null)]
        );
    }
}
