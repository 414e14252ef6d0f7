using System.Text.Json.Serialization;
using Alburnum.Reports.Documents;
using Alburnum.Reports.Words;
using Alburnum.Requirements;
using Alburnum.Workflows.Impregnation;

namespace Alburnum.Reports.Impregnation;

/// <summary>A search for an incising pattern as it is printed. Fields as in docs/json/incise.md.</summary>
public sealed record IncisingDocument
{
    /// <summary>What was asked, in one line.</summary>
    public required string Title { get; init; }

    /// <summary>Required depth, in words.</summary>
    public required string Demand { get; init; }

    /// <summary>Share of cores that must reach it, 0 to 1.</summary>
    public required double WantedShare { get; init; }

    /// <summary>The wood unincised, then the lightest pattern at each depth of cut.</summary>
    public required IReadOnlyList<IncisingTrialDocument> Tried { get; init; }

    /// <summary>What to do.</summary>
    public required string Answer { get; init; }

    /// <summary>What is usual in such timber, unincised and incised, one sentence each, and that the prediction differs where it does.</summary>
    public required IReadOnlyList<string> Usual { get; init; }

    /// <summary>What design codes take off for the cuts; null where nothing is to be cut.</summary>
    public string? StrengthPenalty { get; init; }

    /// <summary>Where that comes from; null where nothing is to be cut.</summary>
    public string? PenaltySource { get; init; }

    /// <summary>What the flow solver found for the pattern chosen; null where it was not run.</summary>
    public string? Check { get; init; }

    /// <summary>What was assumed because nobody said it, one sentence each.</summary>
    public required IReadOnlyList<string> Assumptions { get; init; }

    /// <summary>What to mind, one sentence each.</summary>
    public required IReadOnlyList<string> Cautions { get; init; }
}

/// <summary>One pattern of a search.</summary>
public sealed record IncisingTrialDocument
{
    /// <summary>Depth of its cuts, or that there are none.</summary>
    public required string Name { get; init; }

    /// <summary>Wood that the cuts take out of a square metre of face, cm³.</summary>
    public required double CutOutCm3PerM2 { get; init; }

    /// <summary>Share of cores that reach the depth, 0 to 1.</summary>
    public required double CoreShare { get; init; }

    /// <summary>Share of pieces that reach it everywhere, 0 to 1.</summary>
    public required double PieceShare { get; init; }

    /// <summary>Whether the demand is usually met in such timber.</summary>
    [JsonConverter(typeof(ReachConverter))]
    public required ReachVerdict Usual { get; init; }

    /// <summary>The cuts in words.</summary>
    public required string Pattern { get; init; }
}

/// <summary>Writes a search for an incising pattern down.</summary>
public static class IncisingMapping
{
    /// <summary>The search as a document.</summary>
    public static IncisingDocument Of(IncisingDesign design)
    {
        ArgumentNullException.ThrowIfNull(design);
        var (words, penalty, chosen) = (IncisingWords.Current, design.Penalty, design.Search.Chosen);
        return new()
        {
            Title = words.Title(design.Asked),
            Demand = TreatingWords.Demand(design.Asked.Prediction.Rule),
            WantedShare = design.CoreShare,
            Tried =
            [
                .. design.Search.Best.Zip(
                    design.Usual,
                    (trial, usual) =>
                        new IncisingTrialDocument
                        {
                            Name = words.Name(trial),
                            CutOutCm3PerM2 = trial.Pattern?.CutOutCm3PerM2 ?? 0,
                            CoreShare = trial.Quick.CoreShare.Value,
                            PieceShare = trial.Quick.PieceShare.Value,
                            Usual = usual.Verdict,
                            Pattern = words.Pattern(trial, penalty),
                        }
                ),
            ],
            Answer = words.Answer(chosen, design.CoreShare),
            Usual = words.Usual(design),
            StrengthPenalty = chosen?.Pattern is { } pattern ? TreatingWords.Current.Penalty(penalty, pattern) : null,
            PenaltySource = chosen?.Pattern is null ? null : words.Source(penalty),
            Check = design.Check is { } check ? words.Say(check) : null,
            Assumptions = TreatingWords.Current.Say(design.Asked.Assumptions),
            Cautions = words.Cautions(design.Asked),
        };
    }
}
