using Alburnum.Requirements;

namespace Alburnum.Records.Facts;

/// <summary>Units that fact files may use; the first of each list is the one kept inside.</summary>
internal static class Units
{
    public static readonly IReadOnlyList<(string Unit, double InFirst)> Length = [("mm", 1), ("cm", 10), ("in", 25.4)];

    public static readonly IReadOnlyList<(string Unit, double InFirst)> Share = [("%", 1)];

    public static readonly IReadOnlyList<(string Unit, double InFirst)> MassInVolume =
    [
        ("kg/m3", 1),
        ("pcf", PreservativeAmount.KgPerM3InPcf),
    ];
}
