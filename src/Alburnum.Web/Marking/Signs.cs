using Alburnum.Reports.Documents;
using Alburnum.Reports.Drawings;

namespace Alburnum.Web.Marking;

/// <summary>The sign of each meaning as it stands on the photograph, for the list beside it.</summary>
internal static class Signs
{
    private const double Side = 24;

    public static Drawing Of(Meaning meaning)
    {
        double[] middle = [Side / 2, Side / 2];
        List<double[]> one = [middle];
        List<double[]> triangle =
        [
            [5, 19],
            [12, 5],
            [19, 19],
        ];
        bool Is(Meaning other) => meaning == other;
        var bar = new ScaleDocument
        {
            FromPx = [4, 12],
            ToPx = [20, 12],
            LengthMm = 1,
        };
        var marks = new MarksDocument
        {
            CornersPx = Is(Meaning.Corners) ? one : null,
            Scale = Is(Meaning.Scale) ? bar : null,
            TreatedPx = Is(Meaning.Treated) ? one : null,
            UntreatedPx = Is(Meaning.Untreated) ? one : null,
            LeaveOutPx = Is(Meaning.LeaveOut) ? one : null,
            HeartwoodPx = Is(Meaning.Heartwood) ? triangle : null,
            HeartwoodRingPx = Is(Meaning.Ring) ? one : null,
            PithPx = Is(Meaning.Pith) ? middle : null,
        };
        return new(Side, Side, meaning.Name, [.. MarksDrawing.Of(marks, Is(Meaning.Heartwood) ? 0.9 : 1.6)]);
    }
}
