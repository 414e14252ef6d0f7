using Alburnum.Imaging.Cards;
using Alburnum.Measures;
using Alburnum.Penetration;

namespace Alburnum.Imaging.Reading;

/// <summary>The causes that make a depth read from a photograph uncertain: the one place where their sizes stand.</summary>
internal static class DepthCauses
{
    /// <summary>A side's place is known this many times better than its points scatter: about sixteen of them stray each by itself.</summary>
    public const int SidePart = 4;

    /// <summary>The same of a rim: about 36 of its points stray each by itself.</summary>
    public const int RimPart = 6;

    /// <summary>
    /// Standard uncertainty of a point that stands as given, as a share of the photograph's longer side: how well a hand points on a screen, 3 of 600 of
    /// its points. Our own choice.
    /// </summary>
    public const double GivenShare = 0.005;

    /// <summary>Standard uncertainty of every depth read without a reagent, mm. Our own choice.</summary>
    public const double NoReagentMm = 1;

    /// <summary>Evidence added either way, the logarithm of odds: 20 to 1. Our own choice.</summary>
    public const float Lean = 3;

    /// <summary>What a lean moves a plain front, mm. Our own choice.</summary>
    public const double OrdinaryLeanMm = 0.3;

    private static readonly double LeanOdds = Math.Round(Math.Exp(Lean));

    private static readonly Provenance Ours = OurOwn("checked against drawn photographs of known depth");

    // The way of evaluating is published; figures that stand in the row are not.
    private static readonly Provenance Scatter = OurOwn(
        "from scatter as in JCGM 100:2008, 4.2; checked against drawn photographs of known depth"
    );

    private static readonly Provenance Leaning = OurOwn(
        "from bounds as in JCGM 100:2008, 4.3.7; checked against drawn photographs of known depth"
    );

    private static readonly Provenance Deviations = new(
        Standing.WorkedOut,
        "EN 336",
        "2003",
        "permitted deviations, tolerance class 1",
        "read at second hand; their root mean square with every deviation as likely (JCGM 100:2008, 4.3.7); taken for round pieces as well, by our own choice"
    );

    private static readonly Provenance Bounds = OurOwn(
        "rounded up from 1/√12 = 0.289 of the whole width between two bounds (JCGM 100:2008, 4.3.7)"
    );

    /// <summary>Where the outline lies.</summary>
    public static UncertaintyCause Outline { get; } =
        new("outline", null, "edge-scatter", EvaluationType.A, Scatter)
        {
            Parts = [("side", SidePart), ("rim", RimPart)],
        };

    /// <summary>The same where a person's points stand as they were given.</summary>
    public static UncertaintyCause GivenOutline { get; } =
        new("given-outline", GivenShare, "given-points", EvaluationType.B, Ours);

    /// <summary>The same where a lens was taken into account: what its bow's uncertainty leaves of a side's bow.</summary>
    public static UncertaintyCause LensBow { get; } = new("lens-bow", null, "bow-scatter", EvaluationType.A, Scatter);

    /// <summary>How far the dye creeps past the front; the indicator's own row states it.</summary>
    public static UncertaintyCause DyeCreep { get; } =
        new(
            "dye-creep",
            null,
            "indicator",
            EvaluationType.B,
            new(Standing.FromMemory, "data/indicators.yaml", "", "", "")
        );

    /// <summary>
    /// The same where no reagent was sprayed: how far from the front its own colour ends is not known, and this much is allowed for. In one of six drawn
    /// photographs the least depth read without a reagent was 1 mm too great.
    /// </summary>
    public static UncertaintyCause NoReagent { get; } =
        new("no-reagent", null, "no-reagent", EvaluationType.B, Ours) { Figures = [("mm", NoReagentMm)] };

    /// <summary>Where in the blur the front lies: about a seventh of it.</summary>
    public static UncertaintyCause Blur { get; } = new("blur", 0.15, "blur", EvaluationType.B, Ours);

    /// <summary>Where the main step lies beside a halo: a part of what the halo holds.</summary>
    public static UncertaintyCause Halo { get; } = new("halo", 0.5, "halo", EvaluationType.B, Ours);

    /// <summary>
    /// How far the one place that is least deep lies from what its neighbours, fitted together with it, say: of the least depth alone. Set with
    /// <see cref="Halo"/> on drawings of seeds 1 to 12, so that nineteen intervals of twenty hold.
    /// </summary>
    public static UncertaintyCause LeastPlace { get; } = new("least-place", 0.4, "blur", EvaluationType.B, Ours);

    /// <summary>
    /// Stretches that were taken for readable and are not, or left out and need not be, as beside a thumb or a place that the spray missed: of the mean
    /// alone. A tenth of the perimeter that reads otherwise than the rest moves the mean by a third of the spread; about half of that.
    /// </summary>
    public static UncertaintyCause Stretches { get; } = new("stretches", 0.15, "spread", EvaluationType.B, Ours);

    /// <summary>Which of two poses a disc has. What one pose does to one side it undoes on the other: this share of it is left in the mean.</summary>
    public static UncertaintyCause Pose { get; } = new("pose", 0.3, "pose", EvaluationType.B, Bounds);

    /// <summary>How large the section is, where its nominal size is taken on trust.</summary>
    public static UncertaintyCause NominalSize { get; } =
        new("nominal-size", null, "nominal-size", EvaluationType.B, Deviations)
        {
            Figures = [("nominal", KnownLength.NominalMm), ("large", KnownLength.LargeNominalMm)],
        };

    /// <summary>The same where it was measured, or a known length lies in the picture.</summary>
    public static UncertaintyCause KnownSize { get; } =
        new("known-size", null, "known-size", EvaluationType.B, Ours)
        {
            Figures = [("measured", KnownLength.MeasuredMm), ("end", KnownLength.EndPx)],
        };

    /// <summary>The same where the printed card lies beside the section.</summary>
    public static UncertaintyCause CardSize { get; } =
        new("card-size", null, "card-size", EvaluationType.B, Ours)
        {
            Figures =
            [
                ("level", Reading.CardSize.LevelMm),
                ("print", Reading.CardSize.PrintMm),
                ("length", ScaleCard.CheckMm),
                ("lens", 100 * Reading.CardSize.LensShare),
            ],
        };

    /// <summary>Lens, flattening and unevenly sawn sides.</summary>
    public static UncertaintyCause Flattening { get; } = new("flattening", 0.012, "depth", EvaluationType.B, Ours);

    /// <summary>Texture and noise about the front: each position's own.</summary>
    public static UncertaintyCause Texture { get; } =
        new("texture", null, "misfit", EvaluationType.A, Scatter) { Figures = [("alike", SectionDepth.AlikeMm)] };

    /// <summary>How far the front would lie elsewhere if the evidence of every colour leaned towards treated, or towards untreated.</summary>
    public static UncertaintyCause Colours { get; } =
        new("colours", null, "lean", EvaluationType.B, Leaning)
        {
            Figures = [("odds", LeanOdds), ("ordinary", OrdinaryLeanMm)],
        };

    /// <summary>Every cause, in the order in which they are listed.</summary>
    public static IReadOnlyList<UncertaintyCause> All { get; } =
    [
        Outline,
        GivenOutline,
        LensBow,
        DyeCreep,
        NoReagent,
        Blur,
        Halo,
        Pose,
        NominalSize,
        KnownSize,
        CardSize,
        Flattening,
        LeastPlace,
        Stretches,
        Texture,
        Colours,
    ];

    private static Provenance OurOwn(string note) => new(Standing.FromMemory, "our own estimate", "", "", note);

    /// <summary>Standard uncertainty of a size that a cause states as a share.</summary>
    /// <exception cref="InvalidOperationException">The cause states none.</exception>
    public static double Of(this UncertaintyCause cause, double whole) =>
        (cause.Share ?? throw new InvalidOperationException($"{cause.Key} states no share.")) * whole;
}
