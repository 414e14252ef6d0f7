using System.Globalization;
using Alburnum.Flow.Stepping;
using Alburnum.Impregnation.Prediction;
using Alburnum.Workflows.Impregnation;

namespace Alburnum.Reports.Words;

/// <summary>Which models answered a prediction and what its numbers rest on, in words.</summary>
/// <param name="wording">The language.</param>
public sealed class PredictionWords(Wording wording)
{
    private readonly TreatingWords _treating = new(wording);

    /// <summary>In English.</summary>
    public static PredictionWords English { get; } = new(Wording.English);

    /// <summary>How a run of the flow solver ended.</summary>
    /// <exception cref="ArgumentOutOfRangeException">An ending of a kind that no sentence is known for.</exception>
    public string Say(FlowEnding ending) =>
        ending switch
        {
            Completed completed => wording.Say("prediction.solved", ("steps", Figures.Whole(completed.Steps))),
            StepTooSmall small => wording.Say(
                "prediction.step-too-small",
                ("minutes", Figures.Digits(small.Minutes)),
                ("stage", small.Stage),
                ("cell", Figures.Whole(small.Cell)),
                ("share", Tiny(small.ResidualShare))
            ),
            StepLimit limit => wording.Say(
                "prediction.step-limit",
                ("minutes", Figures.Digits(limit.Minutes)),
                ("stage", limit.Stage),
                ("steps", Figures.Whole(limit.Steps)),
                ("cell", Figures.Whole(limit.Cell)),
                ("share", Tiny(limit.ResidualShare))
            ),
            _ => throw new ArgumentOutOfRangeException(nameof(ending), ending, "Not an ending."),
        };

    /// <summary>Which model answered what, one sentence each.</summary>
    public IEnumerable<string> Models(TreatingPrediction prediction)
    {
        ArgumentNullException.ThrowIfNull(prediction);
        var question = prediction.Asked.Prediction;
        yield return wording.Say(
            "prediction.quick-model",
            ("pieces", Figures.Whole(prediction.Quick.Pieces)),
            ("places", Figures.Whole(prediction.Quick.Places.Count))
        );
        yield return question.Log.HeartwoodRadiusMm > 0
            ? wording.Say("prediction.end-of-heartwood")
            : wording.Say("prediction.end-of-sapwood");
        if (prediction.Solved is not { Section: var section })
        {
            yield return wording.Say("prediction.solver-not-run");
            yield break;
        }
        yield return wording.Say(
            question.Incising is null ? "prediction.solver" : "prediction.solver-without-cuts",
            ("columns", Figures.Whole(section.Mesh.Columns)),
            ("rows", Figures.Whole(section.Mesh.Rows)),
            ("ending", Say(section.Run.Ending))
        );
    }

    /// <summary>What the numbers rest on, one sentence each.</summary>
    public IEnumerable<string> RestsOn(TreatingPrediction prediction)
    {
        ArgumentNullException.ThrowIfNull(prediction);
        var (question, source) = (prediction.Asked.Prediction, prediction.Asked.Schedule.Provenance);
        yield return wording.Say("prediction.sapwood", ("law", Law(question.Sapwood)));
        yield return wording.Say("prediction.heartwood", ("law", Law(question.Heartwood)));
        foreach (var fit in prediction.Fits)
            yield return Say(fit);
        yield return wording.Say(
            "prediction.schedule",
            ("name", question.Schedule.Name),
            ("source", source.Citation),
            ("standing", source.Standing.InWords())
        );
        yield return wording.Say(
            "prediction.voids",
            ("percent", Figures.Number(question.VoidFraction * 100, 0)),
            ("liquid", question.Liquid.Name),
            ("viscosity", Figures.Number(question.Liquid.ViscosityMPaS, 2))
        );
        yield return wording.Say("prediction.assumed-laws");
    }

    private string Say(PermeabilityFit fit) =>
        wording.Say(
            "prediction.fitted",
            ("name", fit.Before.Name),
            ("depths", Figures.Whole(fit.Depths)),
            ("pieces", Figures.Whole(fit.Pieces)),
            ("charges", Figures.Whole(fit.Charges)),
            ("medianBefore", Nm2(fit.Before)),
            ("medianAfter", Nm2(fit.After)),
            ("factorBefore", Factor(fit.Before)),
            ("factorAfter", Factor(fit.After))
        );

    private string Law(PermeabilityLaw law) =>
        wording.Say(
            law.IsInference ? "prediction.law-inferred" : "prediction.law",
            ("name", _treating.Name(law)),
            ("median", Nm2(law)),
            ("factor", Factor(law)),
            ("source", law.Provenance.Citation),
            ("standing", law.Provenance.Standing.InWords())
        );

    private static string Nm2(PermeabilityLaw law) => Figures.Digits(law.LateralMedianM2 * 1e18, 3);

    private static string Factor(PermeabilityLaw law) =>
        Figures.Digits(Math.Exp(1.645 * PermeabilityFit.PieceToPiece(law)), 1);

    private static string Tiny(double share) => share.ToString("0.0e0", CultureInfo.InvariantCulture);
}
