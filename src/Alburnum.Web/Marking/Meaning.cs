using Alburnum.Records.Marks;

namespace Alburnum.Web.Marking;

/// <summary>What a point on a photograph can mean; its key is also the name of its field in the form and in case.yaml.</summary>
/// <param name="Key">Name of the field.</param>
/// <param name="Name">What it is called on the page.</param>
/// <param name="Means">What pointing does, in a few words.</param>
internal sealed record Meaning(string Key, string Name, string Means)
{
    public static readonly Meaning Corners = new(
        MarkField.Corners,
        "Corner or rim",
        "4 corners, or 5 or more rim points"
    );
    public static readonly Meaning Treated = new(MarkField.Treated, "Treated", "Wood of this colour is treated");
    public static readonly Meaning Untreated = new(MarkField.Untreated, "Untreated", "Wood of this colour is not");
    public static readonly Meaning LeaveOut = new(MarkField.LeaveOut, "Leave out", "A knot, a split, a drip");
    public static readonly Meaning Heartwood = new(MarkField.Heartwood, "Heartwood", "Its outline, 3 points or more");
    public static readonly Meaning Ring = new(
        MarkField.HeartwoodRing,
        "Heartwood ring",
        "Along its last ring, 3 or more"
    );
    public static readonly Meaning Pith = new(MarkField.Pith, "Pith", "Type the heartwood's radius too");
    public static readonly Meaning Scale = new(MarkField.Scale, "Known length", "Its two ends; type its length too");

    /// <summary>Every meaning, in the order of the page.</summary>
    public static IReadOnlyList<Meaning> All { get; } =
    [Corners, Treated, Untreated, LeaveOut, Heartwood, Ring, Pith, Scale];
}
