namespace Alburnum.Imaging;

/// <summary>The indicators known without a fact file.</summary>
public static class Indicators
{
    private static readonly Provenance FromMemory = new(
        Standing.FromMemory,
        "general knowledge of indicator colours",
        "",
        "",
        "colours vary with wood, light and dose"
    );

    /// <summary>Copper with chrome azurol S, rubeanic acid or PAN; boron with curcumin; and no indicator at all.</summary>
    public static IReadOnlyList<Indicator> Usual { get; } =
    [
        new(
            "copper-blue",
            "copper, chrome azurol S",
            [0x2B3F8C, 0x1F3A6E, 0x3A56A0, 0x2E4A66, 0x3E86B8],
            [0xC9583A, 0xD9734A, 0xB84A32, 0xE08A5A],
            new(0.26, 0.08),
            FromMemory
        ),
        new(
            "copper-black",
            "copper, rubeanic acid",
            [0x24302A, 0x2E3B30, 0x1E2624, 0x3C4A3A],
            [0xD8B98C, 0xC9A878, 0xE0C8A0, 0xB8935F],
            new(0.26, 0.08),
            FromMemory
        ),
        new(
            "copper-magenta",
            "copper, PAN",
            [0xA8285A, 0xB03068, 0x8C2450, 0xC04070],
            [0xE0B040, 0xD8A048, 0xE8C060, 0xCC9030],
            new(0.26, 0.08),
            FromMemory
        ),
        new(
            "boron-red",
            "boron, curcumin",
            [0xB03A28, 0xA02820, 0xC04A30, 0x8E2A20],
            [0xE0B030, 0xD8A838, 0xE8C850, 0xCC9C30],
            new(0.26, 0.08),
            FromMemory
        ),
        new(
            "none",
            "no indicator: greenish border",
            [0xA8A678, 0x98A078, 0xB0B088, 0x8C9468],
            [0xD8B98C, 0xC9A878, 0xE0C8A0, 0xB8935F],
            new(0.03, 0.06),
            FromMemory
        ),
    ];
}
