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
        var marks = new MarksDocument(
            Is(Meaning.Corners) ? one : null,
            Is(Meaning.Scale) ? new([4, 12], [20, 12], 1) : null,
            Is(Meaning.Treated) ? one : null,
            Is(Meaning.Untreated) ? one : null,
            Is(Meaning.LeaveOut) ? one : null,
            Is(Meaning.Heartwood) ? triangle : null,
            Is(Meaning.Ring) ? one : null,
            Is(Meaning.Pith) ? middle : null,
            null
        );
        return new(Side, Side, meaning.Name, [.. MarksDrawing.Of(marks, Is(Meaning.Heartwood) ? 0.9 : 1.6)]);
    }
}
