using System.Text.Json.Serialization;
using Alburnum.Records.Sweeps;
using Alburnum.Reports.Documents;
using Alburnum.Reports.Words;
using Alburnum.Workflows.Impregnation;

namespace Alburnum.Reports.Impregnation;

/// <summary>A measure over two inputs, as it is printed and drawn. Fields as in docs/json/sweep.md.</summary>
public sealed record SweepDocument
{
    /// <summary>What was asked, in one line.</summary>
    public required string Title { get; init; }

    /// <summary>The measure.</summary>
    [JsonConverter(typeof(SweepMeasureConverter))]
    public required SweepMeasure Measure { get; init; }

    /// <summary>The measure in words, with its unit.</summary>
    public required string MeasureInWords { get; init; }

    /// <summary>True for shares, 0 to 1, drawn as per cent.</summary>
    public required bool IsShare { get; init; }

    /// <summary>Input along the horizontal axis.</summary>
    public required SweepAxis Across { get; init; }

    /// <summary>Input along the vertical axis.</summary>
    public required SweepAxis Up { get; init; }

    /// <summary>The measure, row by row from the lowest value of the input up; null where the inputs cannot be combined.</summary>
    public required IReadOnlyList<IReadOnlyList<double?>> Rows { get; init; }

    /// <summary>What to mind, one sentence each.</summary>
    public required IReadOnlyList<string> Cautions { get; init; }
}

/// <summary>One input of a sweep.</summary>
public sealed record SweepAxis
{
    /// <summary>Name of the input.</summary>
    public required string Name { get; init; }

    /// <summary>Unit of its values.</summary>
    public required string Unit { get; init; }

    /// <summary>Values that it took, rising; two or more.</summary>
    public required IReadOnlyList<double> Values { get; init; }
}

/// <summary>Writes a sweep down.</summary>
public static class SweepMapping
{
    /// <summary>The sweep as a document.</summary>
    /// <param name="request">What was asked.</param>
    /// <param name="points">Every point, row by row from the lowest value of the input up.</param>
    /// <param name="measure">What is mapped.</param>
    public static SweepDocument Of(SweepRequest request, IReadOnlyList<SweptPoint> points, SweepMeasure measure)
    {
        ArgumentNullException.ThrowIfNull(request);
        var treating = request.Treating;
        return new()
        {
            Title = TreatingWords.Current.Title(treating.Species, treating.Section, treating.Schedule),
            Measure = measure,
            MeasureInWords = SweepWords.Current.Say(measure),
            IsShare = measure.IsShare(),
            Across = Axis(request.Across),
            Up = Axis(request.Up),
            Rows =
            [
                .. points
                    .Select(point => point.At(measure))
                    .Chunk(request.Across.Values.Count)
                    .Select(row => (IReadOnlyList<double?>)row),
            ],
            Cautions = TreatingWords.Current.Cautions(request.WettestPercent, request.IsWarmed),
        };
    }

    private static SweepAxis Axis(SweptInput swept) =>
        new()
        {
            Name = swept.Input.Name,
            Unit = swept.Input.Unit,
            Values = swept.Values,
        };
}
