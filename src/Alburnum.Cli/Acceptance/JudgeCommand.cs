using System.ComponentModel;
using Alburnum.Acceptance;
using Alburnum.Penetration;
using Alburnum.Records.CaseFolders;
using Alburnum.Records.Facts;
using Alburnum.Records.Tables;
using Alburnum.Workflows.Cases;
using Spectre.Console;
using Spectre.Console.Cli;

namespace Alburnum.Cli.Acceptance;

/// <summary>Judges a batch: from a table of results, from two counts, or from a case folder.</summary>
internal sealed class JudgeCommand(IAnsiConsole console, FactLibrary facts) : AsyncCommand<JudgeCommand.Settings>
{
    internal sealed class Settings : CommandSettings
    {
        [CommandArgument(0, "[RESULTS]")]
        [Description(
            "Table (CSV or .xlsx): piece and result; or piece, face, position_mm, depth_mm, u_mm and sapwood_mm where known; "
                + "or piece and retention_kg_m3 or least_depth_mm, judged by variables"
        )]
        public string? Results { get; init; }

        [CommandOption("--sheet <NAME>")]
        [Description("Sheet of the workbook, where it has more than one")]
        public string? Sheet { get; init; }

        [CommandOption("--case <FOLDER>")]
        [Description("Or a case folder, which states everything itself; nothing is kept or written")]
        public string? Case { get; init; }

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
        [Description("Depth that stands for a whole zone: minimum (unless said), or percentile (the 5th)")]
        public string? Reading { get; init; }

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
        [Description("Inspection level of the indexed plan; II unless said")]
        public string? Level { get; init; }

        [CommandOption("--severity <SEVERITY>")]
        [Description("normal (unless said), tightened or reduced")]
        public string? Severity { get; init; }

        [CommandOption("--conforming <PERCENT>")]
        [Description("By variables: share of all pieces that must reach the limit")]
        public double? Conforming { get; init; }

        [CommandOption("--population <SHAPE>")]
        [Description("By variables: normal (depths unless said) or log-normal (retentions unless said)")]
        public string? Population { get; init; }

        [CommandOption("--required <KG_PER_M3>")]
        [Description("Retention asked for in the analytical zone, kg/m³")]
        public double? Required { get; init; }

        [CommandOption("--least-depth <MM>")]
        [Description("By variables: depth asked for, mm")]
        public double? LeastDepth { get; init; }

        [CommandOption("--assay <VALUE>")]
        [Description("Composite assay, kg/m³, such as \"14.2 ± 0.4\" or \"< 0.5\"; may be given again")]
        public string[] Assays { get; init; } = [];

        [CommandOption("--confidence <PERCENT>")]
        [Description("Confidence of the bound on the conforming share; 95 unless said")]
        public double? Confidence { get; init; }

        [CommandOption("--json")]
        [Description("Print the verdict as JSON")]
        public bool Json { get; init; }

        /// <summary>Confidence as a share.</summary>
        public double Sure => Options.Number("--confidence", Confidence ?? 95, 50.1, 99.999, "%") / 100;
    }

    public override async Task<int> ExecuteAsync(
        CommandContext context,
        Settings settings,
        CancellationToken cancellationToken
    )
    {
        if (settings.Case is { } folder)
        {
            JudgeOptions.RefuseBesideCase(settings);
            var reading = await Progress.ShowAsync(
                console,
                "Reading sections",
                progress => RunCase.JudgeAsync(new FolderFiles(folder), facts, progress, cancellationToken)
            );
            Show(settings, JudgeSheet.Of(reading.Judged, DecisionRule.Usual), JudgePrint.Print);
            return CommandLine.Done;
        }
        JudgeOptions.RefuseCountsBesideTable(settings);
        var results = settings.Results is { } path
            ? ResultTable.Read(TableText.Open(path, settings.Sheet), JudgeOptions.Section(settings))
            : JudgeOptions.Counts(settings);
        if (results is ValuedPieces valued)
            Show(
                settings,
                VariablesSheet.Of(valued, JudgeOptions.Demand(settings, valued), JudgeOptions.Lot(settings)),
                VariablesPrint.Print
            );
        else
            Show(settings, Attributes(settings, results), JudgePrint.Print);
        return CommandLine.Done;
    }

    private void Show<T>(Settings settings, T document, Action<IAnsiConsole, T> print)
    {
        if (settings.Json)
            console.Profile.Out.Writer.WriteLine(JsonText.Write(document));
        else
            print(console, document);
    }

    private JudgeDocument Attributes(Settings settings, BatchResults results)
    {
        JudgeOptions.RefuseVariables(settings);
        var decision = DecisionRule.Usual;
        var lot = JudgeOptions.Lot(settings);
        var (pieces, demand) = Pieces(settings, results, decision);
        var (rule, other) = JudgeOptions.Rules(settings, facts, lot);
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
            new(pieces, lot, rule)
            {
                Assays = [.. settings.Assays.Select(AssayText.Read)],
                RequiredKgPerM3 = Options.OptionalNumber("--required", settings.Required, 0.001, 2000, "kg/m³"),
                Confidence = settings.Sure,
            },
            decision
        );
        return JudgeSheet.Of(batch, pieces, lot, demand, other, decision);
    }

    private (IReadOnlyList<PieceJudgement> Pieces, string? Demand) Pieces(
        Settings settings,
        BatchResults results,
        DecisionRule decision
    )
    {
        switch (results)
        {
            case JudgedPieces judged:
                return ([.. judged.Pieces.Select(piece => new PieceJudgement(piece.Piece, Said(piece.Passed)))], null);
            case MeasuredPieces measured:
                var rule = JudgeOptions.Depth(settings, facts);
                var reading = JudgeOptions.Reading(settings);
                var section = JudgeOptions.Section(settings)!;
                return (
                    [
                        .. measured.Pieces.Select(piece => new PieceJudgement(
                            piece.Piece,
                            PieceConformity.Judge(
                                rule,
                                HandReadings.Profile(section, piece.Readings),
                                decision,
                                reading
                            )
                        )),
                    ],
                    rule.InWords
                );
            default:
                throw new ArgumentOutOfRangeException(
                    nameof(results),
                    results,
                    "Not a table to be judged by counting."
                );
        }
    }

    private static Judgement Said(bool? passed) =>
        passed switch
        {
            true => new(Verdict.Conforms, ProbabilityRange.Exactly(1), [new JudgedElsewhere(Verdict.Conforms)]),
            false => new(
                Verdict.DoesNotConform,
                ProbabilityRange.Exactly(0),
                [new JudgedElsewhere(Verdict.DoesNotConform)]
            ),
            null => new(Verdict.Undecided, null, [new JudgedElsewhere(Verdict.Undecided)]),
        };
}
