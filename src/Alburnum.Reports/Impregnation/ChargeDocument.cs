using System.Text.Encodings.Web;
using System.Text.Json;
using Alburnum.Impregnation.Charging;

namespace Alburnum.Reports.Impregnation;

/// <summary>The plan for a charge and, once it has been run, its account.</summary>
/// <param name="Name">What the charge is.</param>
/// <param name="PieceCount">Pieces.</param>
/// <param name="VolumeM3">Volume, m³.</param>
/// <param name="SurfaceM2">Lateral surface, m².</param>
/// <param name="Schedule">Name of the schedule.</param>
/// <param name="ScheduleMinutes">Its length, min.</param>
/// <param name="Plan">The plan.</param>
/// <param name="CoreShare">Share of cores expected to reach the depth.</param>
/// <param name="DryingDays">Least days of drying first, where the timber is too wet; null where it is not.</param>
/// <param name="Account">What was achieved; null before.</param>
/// <param name="Assumptions">What was assumed for want of anything said, one sentence each.</param>
/// <param name="Cautions">What to mind.</param>
public sealed record ChargeDocument(
    string Name,
    int PieceCount,
    double VolumeM3,
    double SurfaceM2,
    string Schedule,
    double ScheduleMinutes,
    ChargePlan Plan,
    Estimate CoreShare,
    double? DryingDays,
    ChargeAccount? Account,
    IReadOnlyList<string> Assumptions,
    IReadOnlyList<string> Cautions
)
{
    private static readonly JsonSerializerOptions Options = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        WriteIndented = true,
    };

    /// <summary>Said on every plan.</summary>
    public static IReadOnlyList<string> UsualCautions { get; } =
    [
        "The product's label, safety data sheet and authorisation set strength, use, handling and protective equipment; where they differ from this plan, they hold.",
        "Only a licensed treater may run the charge. Pressure vessels are worked to their own code and inspection.",
        "Keep the load on the drip pad until it has stopped dripping and the product's fixation time has passed; keep rain off, collect every drop.",
        "Wear gloves resistant to the product, eye protection and, where mist or dust can arise, breathing protection. Freshly treated wood is handled with gloves.",
        "Expected uptake is a prediction that published figures cannot confirm: weigh the first charge and correct the strength before the next.",
    ];

    /// <summary>The document as JSON.</summary>
    public string ToJson() => JsonSerializer.Serialize(this, Options);
}
