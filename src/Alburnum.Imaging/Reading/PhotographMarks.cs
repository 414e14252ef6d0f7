using Alburnum.Imaging.Geometry;
using Alburnum.Timber;

namespace Alburnum.Imaging.Reading;

/// <summary>What a person points out on one photograph. Points are in pixels of the upright photograph.</summary>
public sealed record PhotographMarks
{
    /// <summary>Rough corners, clockwise, or rim points; null lets the section be found by itself.</summary>
    public IReadOnlyList<PointPx>? OutlinePx { get; init; }

    /// <summary>A known length; null takes the scale from the nominal size.</summary>
    public ScaleBar? ScaleBar { get; init; }

    /// <summary>Size of the section as measured on the piece; null where nobody measured it.</summary>
    public Section? MeasuredSize { get; init; }

    /// <summary>Places that are treated, are not, or are to be left out.</summary>
    public IReadOnlyList<Touch> Touches { get; init; } = [];

    /// <summary>Where heartwood begins; null: not known.</summary>
    public HeartwoodBorder? Heartwood { get; init; }

    /// <summary>True where nothing is pointed out.</summary>
    public bool IsNone =>
        OutlinePx is null && ScaleBar is null && MeasuredSize is null && Touches.Count == 0 && Heartwood is null;

    /// <summary>Points touched for one purpose, in the order in which they were given.</summary>
    public IReadOnlyList<PointPx> Touched(TouchKind kind) =>
        [.. Touches.Where(touch => touch.Kind == kind).Select(touch => touch.At)];

    /// <summary>What a request points out.</summary>
    public static PhotographMarks Of(ReadingRequest request) =>
        new()
        {
            OutlinePx = request.OutlinePx,
            ScaleBar = request.ScaleBar,
            MeasuredSize = request.MeasuredSize,
            Touches = request.Touches,
            Heartwood = request.Heartwood,
        };

    /// <summary>The request with these marks in place of its own.</summary>
    public ReadingRequest On(ReadingRequest request) =>
        request with
        {
            OutlinePx = OutlinePx,
            ScaleBar = ScaleBar,
            MeasuredSize = MeasuredSize,
            Touches = Touches,
            Heartwood = Heartwood,
        };
}
