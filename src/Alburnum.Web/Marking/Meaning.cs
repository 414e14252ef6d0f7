using Alburnum.Records.Marks;
using static Alburnum.Reports.Words.Wording;

namespace Alburnum.Web.Marking;

/// <summary>What a point on a photograph can mean; its key is also the name of its field in the form and in case.yaml.</summary>
/// <param name="Key">Name of the field.</param>
internal sealed record Meaning(string Key)
{
    public static readonly Meaning Corners = new(MarkField.Corners);
    public static readonly Meaning Treated = new(MarkField.Treated);
    public static readonly Meaning Untreated = new(MarkField.Untreated);
    public static readonly Meaning LeaveOut = new(MarkField.LeaveOut);
    public static readonly Meaning Heartwood = new(MarkField.Heartwood);
    public static readonly Meaning Ring = new(MarkField.HeartwoodRing);
    public static readonly Meaning Pith = new(MarkField.Pith);
    public static readonly Meaning Scale = new(MarkField.Scale);

    /// <summary>What it is called on the page.</summary>
    public string Name => Said($"marking.name.{Key}");

    /// <summary>What pointing does, in a few words.</summary>
    public string Means => Said($"marking.means.{Key}");

    /// <summary>Every meaning, in the order of the page.</summary>
    public static IReadOnlyList<Meaning> All { get; } =
    [Corners, Treated, Untreated, LeaveOut, Heartwood, Ring, Pith, Scale];
}
