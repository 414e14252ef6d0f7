using Alburnum.Imaging.Reading;
using Alburnum.Penetration;

namespace Alburnum.Imaging.Front;

/// <summary>How far the front would lie elsewhere if the evidence of every colour leaned towards treated, or towards untreated.</summary>
/// <remarks>
/// Where colours are plain, a lean moves the front by the blur alone. Where glare, a thumb or a place that the spray missed leaves them unclear,
/// it moves far, and either place may be the true one. What exceeds the ordinary is taken as a standard uncertainty of the model (GUM, 4.3.7),
/// which no number of positions averages out.
/// </remarks>
internal sealed class UnclearColours
{
    /// <summary>Half the width of a rectangular distribution in its standard deviations: √3 (JCGM 100:2008, 4.3.7).</summary>
    private static readonly double RectangularHalfWidth = Math.Sqrt(3);

    private readonly IReadOnlyList<FaceFront> _fronts;
    private readonly IReadOnlyList<FaceFront>[] _leaning;

    /// <summary>Reads the fronts anew, leaning either way.</summary>
    public UnclearColours(SectionFront front)
    {
        _fronts = front.Fronts;
        _leaning =
        [
            // A bay that was read may be none; but no streak becomes a bay that was not read.
            FrontReader.Read(front.Plan, Leaning(front, DepthCauses.Lean)),
            FrontReader.Shifted(front.Plan, Leaning(front, -DepthCauses.Lean), front.Fronts),
        ];
    }

    private static IReadOnlyList<EvidenceStrip> Leaning(SectionFront front, float by) =>
        [.. front.Strips.Select(strip => strip.Leaning(by))];

    /// <summary>Standard uncertainty at a column of a face, mm.</summary>
    public double AtMm(int face, int column) =>
        Beyond(
            _leaning.Max(l => Math.Abs(l[face].DepthMm[column] - _fronts[face].DepthMm[column])),
            _fronts[face].DepthMm[column]
        );

    /// <summary>Standard uncertainty of the mean depth, mm; 0 where no front was read.</summary>
    public double OfMeanMm(IReadOnlyList<FaceProfile> faces)
    {
        if (!Columns(faces, leftOutToo: false).Any())
            return 0;
        var mean = Columns(faces, leftOutToo: false).Average(c => _fronts[c.Face].DepthMm[c.Column]);
        return Beyond(
            _leaning.Max(l =>
                Math.Abs(Columns(faces, leftOutToo: false).Average(c => l[c.Face].DepthMm[c.Column]) - mean)
            ),
            mean
        );
    }

    /// <summary>Standard uncertainty of the least depth, mm: a stretch that was left out as odd may yet be a shallow place.</summary>
    public double OfMinimumMm(IReadOnlyList<FaceProfile> faces)
    {
        if (!Columns(faces, leftOutToo: false).Any())
            return 0;
        var least = Columns(faces, leftOutToo: false).Min(c => _fronts[c.Face].DepthMm[c.Column]);
        var others = _leaning
            .Select(l => Columns(faces, leftOutToo: false).Min(c => l[c.Face].DepthMm[c.Column]))
            .Append(Columns(faces, leftOutToo: true).Min(c => _fronts[c.Face].DepthMm[c.Column]));
        return Beyond(
            others.Max(other => Math.Abs(other - least)),
            Columns(faces, leftOutToo: false).Average(c => _fronts[c.Face].DepthMm[c.Column])
        );
    }

    // No depth is less than nothing: at most the standard deviation of all depths up to twice the usual one being as likely.
    private static double Beyond(double shiftMm, double usualMm) =>
        Math.Clamp(
            shiftMm - DepthCauses.OrdinaryLeanMm,
            0,
            Math.Max(DepthCauses.OrdinaryLeanMm, usualMm) / RectangularHalfWidth
        );

    private IEnumerable<(int Face, int Column)> Columns(IReadOnlyList<FaceProfile> faces, bool leftOutToo)
    {
        for (var f = 0; f < faces.Count; f++)
        {
            var (face, strip) = (faces[f], _fronts[f].Strip);
            for (var i = 0; i < face.DepthMm.Count; i++)
            {
                var column = Math.Min(strip.Columns - 1, (int)(face.PositionsMm[i] / strip.StepMm));
                if (!face.Excluded[i] || (leftOutToo && !_fronts[f].Hidden[column]))
                    yield return (f, column);
            }
        }
    }
}
