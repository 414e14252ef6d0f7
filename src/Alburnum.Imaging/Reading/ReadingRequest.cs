using Alburnum.Imaging.Geometry;
using Alburnum.Penetration;
using Alburnum.Timber;

namespace Alburnum.Imaging.Reading;

/// <summary>What is known, and asked, of one photograph.</summary>
public sealed record ReadingRequest
{
    /// <summary>Nominal size of the piece.</summary>
    public required Section Section { get; init; }

    /// <summary>Outline; null takes it from <see cref="Section"/>.</summary>
    public SectionShape? Shape { get; init; }

    /// <summary>The outline said, or as the section shows.</summary>
    public SectionShape ShapeOrFromSection => Shape ?? ShapeOf(Section);

    /// <summary>The outline of a section.</summary>
    public static SectionShape ShapeOf(Section section) =>
        section switch
        {
            RoundSection => SectionShape.Round,
            HalfRoundSection => SectionShape.HalfRound,
            QuarteredSection => SectionShape.Quartered,
            _ => SectionShape.Rectangle,
        };

    /// <summary>
    /// Rough corners (sawn: 4, clockwise as displayed) or rim points (round: 5 or more), to be drawn to the true edge; null finds the section by itself.
    /// </summary>
    public IReadOnlyList<PointPx>? OutlinePx { get; init; }

    /// <summary>True takes <see cref="OutlinePx"/> as it stands, without drawing it to the edge.</summary>
    internal bool OutlineIsExact { get; init; }

    /// <summary>The indicator sprayed; null decides from the photograph among <see cref="Candidates"/>.</summary>
    public Indicator? Indicator { get; init; }

    /// <summary>Indicators considered where none is named, and compared with the one named. At least one.</summary>
    public required IReadOnlyList<Indicator> Candidates { get; init; }

    /// <summary>Places marked by the user.</summary>
    public IReadOnlyList<Touch> Touches { get; init; } = [];

    /// <summary>Where heartwood begins; null looks for it on untreated wood, by its colour.</summary>
    public HeartwoodBorder? Heartwood { get; init; }

    /// <summary>A reagent sprayed to colour the heartwood; null: none, its own colour is looked for.</summary>
    public HeartwoodReagent? HeartwoodReagent { get; init; }

    /// <summary>True separates the border between incisions from the fingers at them.</summary>
    public bool IsIncised { get; init; }

    /// <summary>A depth whose reach is to be reported, mm, above 0; null: none.</summary>
    public double? RequiredMm { get; init; }

    /// <summary>The section's size as measured on the piece, of the same shape as the nominal one; null where nobody measured it.</summary>
    public Section? MeasuredSize { get; init; }

    /// <summary>A known length in the photograph; null takes the scale from the nominal size.</summary>
    public ScaleBar? ScaleBar { get; init; }

    /// <summary>Distance between reported positions along each face, mm. 0.25 to 1.</summary>
    public double StepMm { get; init; } = 1;
}
