using System.ComponentModel;
using Alburnum.Acceptance;
using Alburnum.Penetration;
using Alburnum.Records.Facts;
using Alburnum.Records.Tables;
using Alburnum.Requirements;
using Alburnum.Timber;
using Spectre.Console;
using Spectre.Console.Cli;

namespace Alburnum.Cli;

/// <summary>Judges a batch from a table of results or from two counts.</summary>
internal sealed class JudgeCommand(IAnsiConsole console) : Command<JudgeCommand.Settings>
{
    internal sealed class Settings : CommandSettings
    {
        [CommandArgument(0, "[RESULTS]")]
        [Description(
            "Table in CSV: piece, result; or piece, face, position_mm, depth_mm, u_mm and sapwood_mm where known"
        )]
        public string? Results { get; init; }

        [CommandOption("--cut <PIECES>")]
        [Description("Pieces cut, where there is no table")]
        public int? Cut { get; init; }

        [CommandOption("--failures <COUNT>")]
        [Description("Pieces that failed, where there is no table")]
        public int? Failures { get; init; }

        [CommandOption("--rule <RULE>")]
        [Description(
            "Depth asked for: a class (NP3), or such as \"6 mm sapwood and 6 mm exposed heartwood over 75 %\""
        )]
        public string? Rule { get; init; }

        [CommandOption("--reading <READING>")]
        [Description("Depth that stands for a whole zone: minimum, or percentile (the 5th)")]
        [DefaultValue("minimum")]
        public string Reading { get; init; } = "minimum";

        [CommandOption("--section <SIZE>")]
        [Description("Nominal section, such as \"100 x 100 mm\" or \"round 120 mm\"")]
        public string? Section { get; init; }

        [CommandOption("--lot <PIECES>")]
        [Description("Pieces in the batch")]
        public int? Lot { get; init; }

        [CommandOption("--must-pass <PERCENT>")]
        [Description("Share of the pieces cut that must pass")]
        public double? MustPass { get; init; }

        [CommandOption("--aql <PERCENT>")]
        [Description("Or the plan indexed at this AQL")]
        public double? Aql { get; init; }

        [CommandOption("--level <LEVEL>")]
        [Description("Inspection level of the indexed plan")]
        [DefaultValue("II")]
        public string Level { get; init; } = "II";

        [CommandOption("--severity <SEVERITY>")]
        [Description("normal, tightened or reduced")]
        [DefaultValue("normal")]
        public string Severity { get; init; } = "normal";

        [CommandOption("--required <KG_PER_M3>")]
        [Description("Retention asked for in the analytical zone, kg/m³")]
        public double? Required { get; init; }

        [CommandOption("--assay <VALUE>")]
        [Description("Composite assay, kg/m³, such as \"14.2 ± 0.4\" or \"< 0.5\"; may be given again")]
        public string[] Assays { get; init; } = [];

        [CommandOption("--confidence <PERCENT>")]
        [Description("Confidence of the bound on the conforming share")]
        [DefaultValue(95.0)]
        public double Confidence { get; init; } = 95;

        [CommandOption("--json")]
        [Description("Prints JSON")]
        public bool Json { get; init; }
    }

    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var document = Judge(settings);
        if (settings.Json)
            console.Profile.Out.Writer.WriteLine(JsonText.Write(document));
        else
            JudgePrint.Print(console, document);
        return CommandLine.Done;
    }

    private static JudgeDocument Judge(Settings settings)
    {
        var decision = DecisionRule.Usual;
        var lot = Options.OptionalWhole("--lot", settings.Lot, 1, 100_000_000, "pieces");
        var (pieces, demand) = settings.Results is { } path
            ? FromTable(path, settings, decision)
            : (FromCounts(settings), null);
        var (rule, other) = Rules(settings, lot);
        if (lot < pieces.Count)
            throw Options.Refused(
                "--lot",
                Options.Digits(lot.Value),
                $"at least the {pieces.Count} pieces that were cut from it"
            );
        if (rule.PiecesAsked < pieces.Count)
            throw Options.Refused(
                settings.Results ?? "--cut",
                $"{pieces.Count} pieces",
                $"at most the {rule.PiecesAsked} that the plan asks for; a plan says nothing of a larger sample"
            );
        var batch = BatchConformity.Judge(
            pieces,
            lot,
            rule,
            [.. settings.Assays.Select(AssayText.Read)],
            Options.OptionalNumber("--required", settings.Required, 0.001, 2000, "kg/m³"),
            decision,
            Options.Number("--confidence", settings.Confidence, 50, 99.999, "%") / 100
        );
        return new(
            batch.Overall.Verdict.InWords(),
            batch.Overall.Probability,
            batch.InWords,
            batch.Rule.InWords,
            demand,
            JudgePart.Of(batch.Penetration),
            batch.Retention is { } retention ? JudgePart.Of(retention) : null,
            batch.Counts,
            batch.ConformingShare,
            Believed(batch, lot),
            [
                .. pieces.Select(piece => new JudgePiece(
                    piece.Number,
                    piece.Judgement.Verdict.InWords(),
                    piece.Judgement.Probability,
                    piece.Judgement.Reasons
                )),
            ],
            OtherReading(other, pieces, lot, decision),
            JudgeHelp.For(pieces, batch, lot, decision)
        );
    }

    private static (IReadOnlyList<PieceJudgement> Pieces, string? Demand) FromTable(
        string path,
        Settings settings,
        DecisionRule decision
    )
    {
        Section? section = null;
        if (settings.Section is { } text && !SectionText.TryParse(text, out section))
            throw Options.Refused("--section", text, SectionText.Expected);
        switch (ResultTable.Read(path, section))
        {
            case JudgedPieces judged:
                return ([.. judged.Pieces.Select(piece => new PieceJudgement(piece.Piece, Said(piece.Passed)))], null);
            case MeasuredPieces measured:
                var rule = Depth(settings);
                var reading = settings.Reading switch
                {
                    "minimum" => DepthReading.Minimum,
                    "percentile" => DepthReading.FifthPercentile,
                    _ => throw Options.Refused("--reading", settings.Reading, "minimum or percentile"),
                };
                return (
                    [
                        .. measured.Pieces.Select(piece => new PieceJudgement(
                            piece.Piece,
                            PieceConformity.Judge(
                                rule,
                                HandReadings.Profile(section!, piece.Readings),
                                decision,
                                reading
                            )
                        )),
                    ],
                    rule.InWords
                );
            default:
                throw new InvalidOperationException("Not a table of results.");
        }
    }

    private static DepthRule Depth(Settings settings)
    {
        var text = settings.Rule ?? throw Options.Refused("--rule", "nothing", DepthRuleText.Expected);
        return DepthRuleText.Read(text, FactLibrary.Load(FactLibrary.DefaultFolder).PenetrationClasses)
            ?? throw Options.Refused("--rule", text, DepthRuleText.Expected);
    }

    private static IReadOnlyList<PieceJudgement> FromCounts(Settings settings)
    {
        if (settings.Cut is null && settings.Failures is null)
            throw Options.Refused("RESULTS", "nothing", "a table of results, or --cut and --failures");
        var cut = Options.Whole("--cut", settings.Cut, 1, 1_000_000, "pieces");
        var failures = Options.Whole(
            "--failures",
            settings.Failures,
            0,
            cut,
            "failures, since no more can fail than were cut"
        );
        return [.. Enumerable.Range(1, cut).Select(i => new PieceJudgement(Options.Digits(i), Said(i > failures)))];
    }

    private static Judgement Said(bool? passed) =>
        passed switch
        {
            true => new(Verdict.Conforms, 1, ["Judged elsewhere: pass."]),
            false => new(Verdict.DoesNotConform, 0, ["Judged elsewhere: fail."]),
            null => new(Verdict.Undecided, null, ["Not determined."]),
        };

    /// <summary>The rule to use, and the other reading of the same figure where there is one.</summary>
    private static (AcceptanceRule Rule, AcceptanceRule? Other) Rules(Settings settings, int? lot)
    {
        if (settings.Aql is null == settings.MustPass is null)
            throw Options.Refused(
                "--must-pass, --aql",
                settings.Aql is null ? "neither" : "both",
                "one of the two: they are different rules"
            );
        if (settings.MustPass is { } percent)
            return (new ShareMustPass(Options.Number("--must-pass", percent, 1, 100, "%") / 100), null);
        var aql = Options.Number("--aql", settings.Aql, 0.01, 1000, "");
        var found = SamplingOptions.Indexed(
            AttributeTableFile.Load(FactLibrary.DefaultFolder).Tables,
            Options.Whole("--lot", lot, 1, 100_000_000, "pieces"),
            settings.Level,
            aql,
            settings.Severity
        );
        return (found.Rule, aql < 100 ? new ShareMustPass(1 - aql / 100) : null);
    }

    /// <summary>The beta-binomial reading beside the exact bound; undecided pieces count as failing in both.</summary>
    private static string Believed(BatchJudgement batch, int? lot)
    {
        var belief = new BetaBinomial(batch.Counts.Cut - batch.Counts.Conforming, batch.Counts.Cut);
        var share = Options.Percent(belief.ConformingShareExceeded(batch.ConformingShare.Confidence));
        var supply =
            $"Bayesian reading (Jeffreys' belief before): {Options.Percent(batch.ConformingShare.Confidence)} probable that at least {share} of the supply conform";
        return lot is { } pieces && batch.Rule is ShareMustPass rule
            ? $"{supply}, {Options.Percent(belief.LotConforms(rule.Share, pieces))} that {Options.Percent(rule.Share)} of this lot do."
            : supply + ".";
    }

    private static string? OtherReading(
        AcceptanceRule? other,
        IReadOnlyList<PieceJudgement> pieces,
        int? lot,
        DecisionRule decision
    )
    {
        if (other is null)
            return null;
        var judged = BatchConformity.Judge(pieces, lot, other, [], null, decision);
        return $"Read as \"{other.InWords}\" instead, {other.MayFail(pieces.Count)} of {pieces.Count} may fail and penetration "
            + $"{(judged.Penetration.Verdict == Verdict.Undecided ? "is undecided" : judged.Penetration.Verdict.InWords())}.";
    }
}
