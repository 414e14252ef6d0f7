using Alburnum.Timber;

namespace Alburnum.Impregnation.Prediction;

/// <summary>What the way in from a place holds: depth reached straight in, mm; liquid gained, and solution or product kept in the place's own strip and in its zone, mm² of voids.</summary>
internal readonly record struct LaidWay(double DepthMm, double NetMm2, double KeptMm2, double InZoneMm2);

/// <summary>How far a core from a narrow face of a board goes through treated wood: as far as the fronts from its broad faces have met.</summary>
internal sealed class LongWays
{
    // For each place on a narrow face: its number, how far it lies from the first broad face, and the broad faces' places by their distance from it.
    private readonly IReadOnlyList<(int Place, double LevelMm, IReadOnlyList<Crossing> Crossings)> _ways;
    private readonly double _thicknessMm;

    // Two places that face each other across the board.
    private readonly record struct Crossing(double AtMm, int Upper, int Lower);

    private LongWays(
        IReadOnlyList<(int Place, double LevelMm, IReadOnlyList<Crossing> Crossings)> ways,
        double thicknessMm
    ) => (_ways, _thicknessMm) = (ways, thicknessMm);

    /// <summary>The long ways of a section; none where all end at half its thickness.</summary>
    /// <param name="section">The section.</param>
    /// <param name="places">Places around it.</param>
    /// <param name="endMm">Half its thickness, mm.</param>
    public static LongWays Of(Section section, IReadOnlyList<SectionPosition> places, double endMm)
    {
        if (section is not RectangularSection sawn || sawn.WidthMm == sawn.HeightMm)
            return new([], 2 * endMm);
        var broad = sawn.WidthMm > sawn.HeightMm ? 1 : 2;
        var numbered = places.Select((place, i) => (place, i)).ToList();
        var upper = numbered.Where(each => each.place.Face == broad).ToList();
        // Faces run clockwise: the one opposite runs the other way.
        var lower = numbered.Where(each => each.place.Face == broad + 2).Reverse().ToList();
        // The face after the broad one is met at its end, the one before it at its start.
        List<Crossing> fromStart = [.. upper.Zip(lower, (a, b) => new Crossing(a.place.AlongMm, a.i, b.i))];
        var length = Math.Max(sawn.WidthMm, sawn.HeightMm);
        List<Crossing> fromEnd =
        [
            .. fromStart.AsEnumerable().Reverse().Select(each => each with { AtMm = length - each.AtMm }),
        ];
        return new(
            [
                .. numbered
                    .Where(each => each.place.Face % 2 != broad % 2)
                    .Select(each =>
                        each.place.Face == broad + 1
                            ? (each.i, each.place.AlongMm, (IReadOnlyList<Crossing>)fromEnd)
                            : (each.i, 2 * endMm - each.place.AlongMm, fromStart)
                    ),
            ],
            2 * endMm
        );
    }

    /// <summary>Ends each long way that was taken for filled where it first meets wood that the broad faces' fronts have not come to.</summary>
    /// <param name="laid">What the way in from each place holds; changed in place.</param>
    public void Settle(LaidWay[] laid)
    {
        foreach (var (place, levelMm, crossings) in _ways)
        {
            var own = laid[place].DepthMm;
            if (own < _thicknessMm / 2)
                continue;
            var before = 0.0;
            foreach (var (at, upper, lower) in crossings)
            {
                if (at > own)
                    break;
                var isTreated = laid[upper].DepthMm >= levelMm || laid[lower].DepthMm >= _thicknessMm - levelMm;
                if (!isTreated && at > _thicknessMm / 2)
                {
                    own = Math.Max(_thicknessMm / 2, (before + at) / 2);
                    break;
                }
                before = at;
            }
            laid[place] = laid[place] with { DepthMm = own };
        }
    }
}
