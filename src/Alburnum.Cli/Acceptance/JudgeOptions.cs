using Alburnum.Acceptance;
using Alburnum.Acceptance.Indexed;
using Alburnum.Acceptance.Variables;
using Alburnum.Penetration;
using Alburnum.Records.Facts;
using Alburnum.Records.Tables;
using Alburnum.Requirements;
using Alburnum.Timber;

namespace Alburnum.Cli.Acceptance;

/// <summary>What the options of <c>judge</c> mean, and which of them do not go together.</summary>
internal static class JudgeOptions
{
    private const int PiecesMax = 100_000_000;

    public static int? Lot(JudgeCommand.Settings settings) =>
        Options.OptionalWhole("--lot", settings.Lot, 1, PiecesMax, "pieces");

    public static Section? Section(JudgeCommand.Settings settings)
    {
        Section? section = null;
        if (settings.Section is { } text && !SectionText.TryParse(text, out section))
            throw Options.Refused("--section", text, SectionText.Expected);
        return section;
    }

    public static DepthRule Depth(JudgeCommand.Settings settings, FactLibrary facts)
    {
        var text = settings.Rule ?? throw Options.Refused("--rule", "nothing", DepthRuleText.Expected);
        return DepthRuleText.Read(text, facts.PenetrationClasses)
            ?? throw Options.Refused("--rule", text, DepthRuleText.Expected);
    }

    public static DepthReading Reading(JudgeCommand.Settings settings) =>
        settings.Reading switch
        {
            null or "minimum" => DepthReading.Minimum,
            "percentile" => DepthReading.FifthPercentile,
            var text => throw Options.Refused("--reading", text, "minimum or percentile"),
        };

    /// <summary>Pieces known by two counts alone.</summary>
    public static JudgedPieces Counts(JudgeCommand.Settings settings)
    {
        if (settings.Cut is null && settings.Failures is null)
            throw Options.Refused("RESULTS", "nothing", "a table of results, --cut and --failures, or --case");
        var cut = Options.Whole("--cut", settings.Cut, 1, 1_000_000, "pieces");
        var failures = Options.Whole(
            "--failures",
            settings.Failures,
            0,
            cut,
            "failures, since no more can fail than were cut"
        );
        return new([.. Enumerable.Range(1, cut).Select(i => (Options.Digits(i), (bool?)(i > failures)))]);
    }

    /// <summary>The rule to use, and the other reading of the same figure where there is one.</summary>
    public static (AcceptanceRule Rule, AcceptanceRule? Other) Rules(
        JudgeCommand.Settings settings,
        FactLibrary facts,
        int? lot
    )
    {
        if (settings.Aql is null == settings.MustPass is null)
            throw Options.Refused(
                "--must-pass, --aql",
                settings.Aql is null ? "neither" : "both",
                "one of the two: they are different rules"
            );
        if (settings.MustPass is { } percent)
            return (new ShareMustPass(Options.Number("--must-pass", percent, 1, 100, "%") / 100), null);
        var aql = Options.Number("--aql", settings.Aql, 0.01, 1000, "(an AQL)");
        var found = SamplingOptions.Indexed(
            facts.Sampling.Tables,
            Options.Whole("--lot", lot, 1, PiecesMax, "pieces"),
            settings.Level ?? "II",
            aql,
            settings.Severity ?? "normal"
        );
        return (new IndexedSampling(found), aql < 100 ? new ShareMustPass(1 - aql / 100) : null);
    }

    /// <summary>What is asked of values measured on the pieces.</summary>
    public static VariablesDemand Demand(JudgeCommand.Settings settings, ValuedPieces valued)
    {
        var isRetention = valued.Measure.Unit == "kg/m³";
        Options.RefuseGiven(
            "a table of values is judged by variables: it takes --conforming, --confidence, --population, --lot and "
                + (isRetention ? "--required" : "--least-depth"),
            ("--must-pass", settings.MustPass is not null),
            ("--aql", settings.Aql is not null),
            ("--rule", settings.Rule is not null),
            ("--reading", settings.Reading is not null),
            ("--section", settings.Section is not null),
            ("--level", settings.Level is not null),
            ("--severity", settings.Severity is not null),
            ("--assay", settings.Assays.Length > 0),
            (
                isRetention ? "--least-depth" : "--required",
                (isRetention ? settings.LeastDepth : settings.Required) is not null
            )
        );
        var lot = Lot(settings);
        if (lot < valued.Pieces.Count)
            throw Options.Refused(
                "--lot",
                Options.Digits(lot.Value),
                $"at least the {valued.Pieces.Count} pieces that were measured"
            );
        return new(
            isRetention
                ? Options.Number("--required", settings.Required, 0.001, 2000, "kg/m³")
                : Options.Number("--least-depth", settings.LeastDepth, 0.1, 1000, "mm"),
            valued.Measure.Unit,
            Options.Number("--conforming", settings.Conforming, 50.1, 99.99, "% of all pieces") / 100,
            settings.Sure,
            settings.Population switch
            {
                null => isRetention ? Population.LogNormal : Population.Normal,
                "normal" => Population.Normal,
                "log-normal" => Population.LogNormal,
                var text => throw Options.Refused("--population", text, "normal or log-normal"),
            }
        );
    }

    /// <summary>A table and two counts would be two answers to one question.</summary>
    public static void RefuseCountsBesideTable(JudgeCommand.Settings settings) =>
        Options.RefuseGiven(
            "nothing beside a table of results",
            ("--cut", settings.Results is not null && settings.Cut is not null),
            ("--failures", settings.Results is not null && settings.Failures is not null)
        );

    /// <summary>Options by variables have no meaning where pieces are counted.</summary>
    public static void RefuseVariables(JudgeCommand.Settings settings) =>
        Options.RefuseGiven(
            "no such option where pieces are counted; by variables needs a table with retention_kg_m3 or least_depth_mm",
            ("--conforming", settings.Conforming is not null),
            ("--population", settings.Population is not null),
            ("--least-depth", settings.LeastDepth is not null)
        );

    /// <summary>A case states its own demands; an option beside it would be passed over in silence.</summary>
    public static void RefuseBesideCase(JudgeCommand.Settings settings) =>
        Options.RefuseGiven(
            "nothing beside --case: the case states it",
            ("RESULTS", settings.Results is not null),
            ("--sheet", settings.Sheet is not null),
            ("--cut", settings.Cut is not null),
            ("--failures", settings.Failures is not null),
            ("--rule", settings.Rule is not null),
            ("--reading", settings.Reading is not null),
            ("--section", settings.Section is not null),
            ("--lot", settings.Lot is not null),
            ("--must-pass", settings.MustPass is not null),
            ("--aql", settings.Aql is not null),
            ("--level", settings.Level is not null),
            ("--severity", settings.Severity is not null),
            ("--conforming", settings.Conforming is not null),
            ("--population", settings.Population is not null),
            ("--required", settings.Required is not null),
            ("--least-depth", settings.LeastDepth is not null),
            ("--assay", settings.Assays.Length > 0),
            ("--confidence", settings.Confidence is not null)
        );
}
