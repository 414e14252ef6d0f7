using Alburnum.Acceptance;
using Alburnum.Impregnation.Heating;
using Alburnum.Impregnation.Incising;
using Alburnum.Measures;
using Alburnum.Requirements;
using Alburnum.Timber;

namespace Alburnum.Impregnation.Prediction;

/// <summary>What is asked about a treatment.</summary>
public sealed record PredictionQuestion
{
    /// <summary>Size of the pieces.</summary>
    public required Section Section { get; init; }

    /// <summary>Where the pieces lay in the log.</summary>
    public required LogGeometry Log { get; init; }

    /// <summary>How permeable the sapwood is.</summary>
    public required PermeabilityLaw Sapwood { get; init; }

    /// <summary>How permeable the heartwood is.</summary>
    public required PermeabilityLaw Heartwood { get; init; }

    /// <summary>Share of the volume that is cavity, air and free water together, above 0.</summary>
    public required double VoidFraction { get; init; }

    /// <summary>Share of the cavities that holds free water, 0 below fibre saturation.</summary>
    public double WaterShare { get; init; }

    /// <summary>The solution.</summary>
    public required TreatingLiquid Liquid { get; init; }

    /// <summary>What warms or cools the wood; null where all is as warm as the solution.</summary>
    public Warming? Warming { get; init; }

    /// <summary>The schedule.</summary>
    public required Schedule Schedule { get; init; }

    /// <summary>The cuts on every face; null where there are none.</summary>
    public required IncisingPattern? Incising { get; init; }

    /// <summary>Required depth.</summary>
    public required DepthRule Rule { get; init; }

    /// <summary>Whether a depth is asked for at all: otherwise nothing is there that pieces or cores could meet.</summary>
    public bool IsDepthAsked => Rule is not NoDepth;

    /// <summary>Depth of the analytical zone, mm; null for the whole sapwood, or the whole piece where there is none.</summary>
    public required double? ZoneDepthMm { get; init; }

    /// <summary>Places on each face of a sawn section at which pieces are read, where nobody says.</summary>
    public const int UsualPlacesPerFace = 10;

    /// <summary>True where sapwood reaches a face.</summary>
    public bool HasSapwood =>
        SectionPositions.Around(Section, Log, UsualPlacesPerFace).Any(place => place.SapwoodMm > 0);

    /// <summary>False where the rule speaks of wood that reaches no place on a face, so that every piece would meet it untreated.</summary>
    public bool AsksOfAnyPlace =>
        SectionPositions.Around(Section, Log, UsualPlacesPerFace).Any(place => DepthAt.Asks(Rule, place));
}

/// <summary>What is expected of many pieces, each drawn by chance.</summary>
public sealed record QuickPrediction
{
    /// <summary>Pieces drawn.</summary>
    public required int Pieces { get; init; }

    /// <summary>Places around the section.</summary>
    public required IReadOnlyList<SectionPosition> Places { get; init; }

    /// <summary>Depth of a core at each place over all pieces, mm; in incised wood taken anywhere between the cuts and at them.</summary>
    public required IReadOnlyList<Spread> DepthMm { get; init; }

    /// <summary>Least depth of a piece, mm: of the border between the cuts where there are any.</summary>
    public required Spread LeastMm { get; init; }

    /// <summary>Mean depth of a piece's unbroken border, mm: between the cuts where there are any, otherwise the mean depth.</summary>
    public required Spread BorderMm { get; init; }

    /// <summary>Mean depth of a piece, mm, what goes deeper at the cuts included.</summary>
    public required Spread MeanMm { get; init; }

    /// <summary>Net uptake of a piece, L per m³ of wood.</summary>
    public required Spread UptakeLPerM3 { get; init; }

    /// <summary>Solution kept in a piece, L per m³ of wood: its net uptake, and the own water that it drove out. Of product, the solution that would carry it.</summary>
    public required Spread KeptLPerM3 { get; init; }

    /// <summary>Solution kept in the analytical zone, L per m³ of zone.</summary>
    public required Spread ZoneLPerM3 { get; init; }

    /// <summary>Share of pieces whose border meets the rule at every place, between the cuts where there are any; its uncertainty is the spread between the hundred batches drawn, known to 7 %.</summary>
    public required Estimate PieceShare { get; init; }

    /// <summary>Share of cores, one taken anywhere on a piece, that meet the rule.</summary>
    public required Estimate CoreShare { get; init; }

    /// <summary>Share of conforming cores in each batch drawn, rising.</summary>
    public required IReadOnlyList<double> BatchShares { get; init; }

    /// <summary>How many times the solution is taken up that the wood's permeability lets expect, as a plant's own charges show; 1 where nobody knows better.</summary>
    public double UptakeTimes { get; private init; } = 1;

    /// <summary>Depth of the middle piece in the middle half of each face, mm: what the flow solver's mean depth speaks of.</summary>
    public double FaceMiddleMm()
    {
        var faces = Enumerable
            .Range(0, Places.Count)
            .GroupBy(i => Places[i].Face)
            .Select(face => face.ToList())
            .ToList();
        List<List<int>> middles = [.. faces.Select(face => face[(face.Count / 4)..^(face.Count / 4)])];
        double sum = 0,
            breadth = 0;
        foreach (var i in middles.SelectMany(middle => middle))
        {
            sum += Places[i].Own.BreadthMm * (IsReachedFromBeside(i) ? Places[i].WayMm : DepthMm[i].Middle);
            breadth += Places[i].Own.BreadthMm;
        }
        return sum / breadth;

        // A way straight in lies in treated wood throughout where the front from the face beside has come as far as it lies from that face.
        bool IsReachedFromBeside(int i)
        {
            if (faces.Count < Corners)
                return DepthMm[i].Middle >= Places[i].Own.EndMm;
            var (face, along) = (Places[i].Face - 1, Places[i].AlongMm);
            var toEnd = Places[faces[face][0]].AlongMm + Places[faces[face][^1]].AlongMm - along;
            // The way ends half-way up the face beside: the front that counts is the one from there.
            var beside = faces[(face + (along < toEnd ? Corners - 1 : 1)) % Corners];
            var front = (DepthMm[beside[(beside.Count - 1) / 2]].Middle + DepthMm[beside[beside.Count / 2]].Middle) / 2;
            return front >= Math.Min(along, toEnd);
        }
    }

    private const int Corners = 4;

    private const int Batches = 100;

    /// <summary>Chance that a batch passes a sampling plan judged by one core a piece.</summary>
    /// <param name="plan">The plan.</param>
    public double ChanceToPass(SamplingPlan plan) =>
        BatchShares.Average(share => plan.Acceptance(1 - share, new SteadyProcess()));

    /// <summary>The same where so many times the solution is taken up, as a plant's own charges show; never more than the voids hold.</summary>
    /// <param name="factor">Above 0.</param>
    /// <param name="room">The most that may be kept, as a share of the volume: that of the cavities, or more where walls hold product.</param>
    public QuickPrediction TakingUp(double factor, double room)
    {
        Require.Positive(factor, "(ratio)");
        return this with
        {
            UptakeTimes = KeptLPerM3.Middle > 0 ? Held(KeptLPerM3.Middle) / KeptLPerM3.Middle : factor,
            UptakeLPerM3 = Times(UptakeLPerM3),
            KeptLPerM3 = Times(KeptLPerM3),
            ZoneLPerM3 = Times(ZoneLPerM3),
        };

        Spread Times(Spread litres) => new(Held(litres.Low), Held(litres.Middle), Held(litres.High));
        double Held(double litres) => Math.Min(1000 * room, factor * litres);
    }

    /// <summary>Draws pieces and reads what each takes from the table of its schedule.</summary>
    /// <param name="question">What is asked.</param>
    /// <param name="front">The table of its schedule, solution and moisture.</param>
    /// <param name="seed">Seed of the draws: the same seed gives the same answer.</param>
    /// <param name="pieces">Pieces to draw, 100 to 1e6; rounded to whole batches of a hundredth.</param>
    /// <param name="product">The table of the product, where what is read is where the product stays; null: the solution.</param>
    /// <param name="cancellation">Stops between batches.</param>
    public static QuickPrediction Draw(
        PredictionQuestion question,
        FrontTable front,
        int seed,
        int pieces = Draws.Pieces,
        FrontTable? product = null,
        CancellationToken cancellation = default
    )
    {
        Require.InRange(pieces, Batches, 1_000_000, "pieces");
        Require.InRange(question.VoidFraction, 0.01, 0.95, "(share)");
        var treat = new PieceTreatment(question, front, product, PredictionQuestion.UsualPlacesPerFace);
        var drawn = new DrawnPieces(treat.Places, question.Rule, Batches, pieces / Batches);
        var random = new SeededRandom(seed);
        for (var batch = 0; batch < Batches; batch++)
        {
            cancellation.ThrowIfCancellationRequested();
            var (sapwood, heartwood) = (random.NextNormal(), random.NextNormal());
            for (var n = 0; n < pieces / Batches; n++)
                drawn.Add(batch, treat.Next(random, sapwood, heartwood));
        }
        return drawn.Summary();
    }
}
