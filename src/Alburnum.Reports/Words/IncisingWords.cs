using Alburnum.Impregnation.Incising;
using Alburnum.Impregnation.Prediction;
using Alburnum.Workflows.Impregnation;

namespace Alburnum.Reports.Words;

/// <summary>What was found for incising, in words.</summary>
/// <param name="wording">The language.</param>
public sealed class IncisingWords(Wording wording)
{
    private readonly TreatingWords _treating = new(wording);

    /// <summary>In the language chosen.</summary>
    public static IncisingWords Current => new(Wording.Current);

    /// <summary>Said on every design.</summary>
    public IReadOnlyList<string> Cautions(TreatingQuestion asked) =>
        [wording.Say("incising.caution"), .. _treating.Cautions(asked)];

    /// <summary>What is asked, in one line.</summary>
    public string Title(TreatingQuestion asked) => wording.Say("incising.title", ("asked", _treating.Title(asked)));

    /// <summary>What must be reached, and by how many cores.</summary>
    /// <param name="demand">What, in words.</param>
    /// <param name="coreShare">Share of cores that must reach it, 0 to 1.</param>
    public string Required(string demand, double coreShare) =>
        wording.Say("incising.required", ("demand", demand), ("share", Figures.Percent(coreShare, wording)));

    /// <summary>Name of a trial.</summary>
    public string Name(IncisingTrial trial)
    {
        ArgumentNullException.ThrowIfNull(trial);
        return trial.Pattern is { } pattern
            ? wording.Say("incising.cuts", ("depth", Figures.Number(pattern.DepthMm, 0)))
            : wording.Say("incising.unincised");
    }

    /// <summary>The pattern of a trial.</summary>
    public string Pattern(IncisingTrial trial, IncisingPenalty penalty)
    {
        ArgumentNullException.ThrowIfNull(trial);
        ArgumentNullException.ThrowIfNull(penalty);
        if (trial.Pattern is not { } pattern)
            return wording.Say("incising.no-cuts");
        var cuts = _treating.Say(pattern);
        return penalty.Beyond(pattern).Count > 0 ? wording.Say("incising.beyond", ("pattern", cuts)) : cuts;
    }

    /// <summary>What to do.</summary>
    /// <param name="chosen">The trial chosen; null where none is enough.</param>
    /// <param name="coreShare">Share of cores that must reach the depth, 0 to 1.</param>
    public string Answer(IncisingTrial? chosen, double coreShare) =>
        chosen switch
        {
            null => wording.Say("incising.none-enough"),
            { Pattern: { } pattern } => wording.Say(
                "incising.lightest",
                ("share", Figures.Percent(coreShare, wording)),
                ("pattern", _treating.Say(pattern)),
                ("pieces", Figures.Certainty(chosen.Quick.PieceShare.Value, wording))
            ),
            _ => wording.Say("incising.not-needed"),
        };

    /// <summary>What is usual in such timber, unincised and, where cuts were tried, incised; and that a prediction differs where it does.</summary>
    public IReadOnlyList<string> Usual(IncisingDesign design)
    {
        ArgumentNullException.ThrowIfNull(design);
        var (trials, chosen) = (design.Search.Best.Zip(design.Usual).ToList(), design.Search.Chosen);
        var words = new PredictionWords(wording);
        return
        [
            .. trials
                .DistinctBy(each => each.First.Pattern is null)
                .Select(each =>
                    words.Usual(
                        each.Second,
                        each.First.Pattern is null ? "incising.usual-unincised" : "incising.usual-incised"
                    )
                ),
            .. trials.Exists(each =>
                (chosen is null || ReferenceEquals(each.First, chosen)) && each.Second.DiffersFrom(each.First.Quick)
            )
                ? (string[])[words.UsualDiffers]
                : [],
        ];
    }

    /// <summary>Where the design code's factors come from.</summary>
    public string Source(IncisingPenalty penalty)
    {
        ArgumentNullException.ThrowIfNull(penalty);
        return wording.Say(
            "incising.strength-source",
            ("source", penalty.Source.Citation),
            ("standing", wording.Say(penalty.Source.Standing))
        );
    }

    /// <summary>What the flow solver found, and what the search took for the same wood.</summary>
    public string Say(RepeatingCell check)
    {
        ArgumentNullException.ThrowIfNull(check);
        return wording.Say(
            "incising.check",
            ("boxes", Figures.Whole(check.Boxes)),
            ("depth", Figures.Number(check.Solved.UnbrokenMm, 1)),
            (
                "grid",
                check.GridErrorMm is { } error
                    ? wording.Say("incising.grid", ("error", Figures.Number(error, 1)))
                    : wording.Say("incising.grid-not-known")
            ),
            ("mean", Figures.Number(check.Solved.MeanMm, 1)),
            ("taken", Figures.Number(check.Taken.UnbrokenMm, 1)),
            ("takenMean", Figures.Number(check.Taken.MeanMm, 1)),
            ("ending", new PredictionWords(wording).Say(check.Ending))
        );
    }
}
