namespace Alburnum.Impregnation.Prediction;

/// <summary>What lies in one band of depth under the middle of a face, in wood slower than all but a twentieth, in the middle wood and in wood faster than all but a twentieth.</summary>
/// <param name="FromMm">Where the band begins, mm.</param>
/// <param name="ToMm">Where it ends, mm.</param>
/// <param name="InBand">Solution, or product as the solution that would carry it, L per m³ of the band.</param>
/// <param name="ToFace">The same, L per m³ of the zone from the face to the band's end: what an assay of that zone finds.</param>
public sealed record DepthBand(double FromMm, double ToMm, Spread InBand, Spread ToFace)
{
    private static readonly double[] Ends = [2.5, 5, 10, 15, 20, 30, 40, 60, 80, 100, 150, 200, 300, 500, 1000];

    /// <summary>The bands under the middle of the face with most sapwood, to the middle of the piece or to heartwood that lets next to nothing through.</summary>
    /// <param name="question">What is asked; its cuts are left out.</param>
    /// <param name="table">The table of the solution, or of the product.</param>
    public static IReadOnlyList<DepthBand> Of(PredictionQuestion question, FrontTable table)
    {
        ArgumentNullException.ThrowIfNull(table);
        var way = MiddleWay.Of(question);
        WayReading Wood(double factor) => way.In(table, way.Law.LateralMedianM2 * factor);
        var factor = way.Law.TwentiethFactor;
        var (slow, middle, fast) = (Wood(1 / factor), Wood(1), Wood(factor));
        var bands = new List<DepthBand>();
        var from = 0.0;
        foreach (var to in Ends.TakeWhile(end => end < way.LengthMm).Append(way.LengthMm))
        {
            bands.Add(new(from, to, Held(from, to), Held(0, to)));
            from = to;
        }
        return bands;

        Spread Held(double from, double to) =>
            new(way.LPerM3(slow, from, to), way.LPerM3(middle, from, to), way.LPerM3(fast, from, to));
    }
}
