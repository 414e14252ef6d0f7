using System.Globalization;
using System.Security.Cryptography;
using System.Text.Json;
using Alburnum.Flow.Pieces;
using Alburnum.Impregnation.Prediction;
using Alburnum.Records.Facts;
using Alburnum.Records.Sweeps;

namespace Alburnum.Workflows.Impregnation;

/// <summary>What is to be predicted over two inputs.</summary>
public sealed record SweepRequest
{
    /// <summary>The wood, the schedule and the depth; its two inputs are not used.</summary>
    public required TreatingRequest Treating { get; init; }

    /// <summary>Input along the horizontal axis.</summary>
    public required SweptInput Across { get; init; }

    /// <summary>Input along the vertical axis; another one.</summary>
    public required SweptInput Up { get; init; }

    /// <summary>Pieces to draw for each point, 100 to 1 000 000.</summary>
    public required int Pieces { get; init; }

    /// <summary>Seed of the draws, the same for each point.</summary>
    public required int Seed { get; init; }

    /// <summary>Greatest moisture content of any point, %.</summary>
    public double WettestPercent =>
        new[] { Across, Up }
            .Where(swept => swept.Input.IsMoisture)
            .Select(swept => swept.Values[^1])
            .DefaultIfEmpty(Treating.MoisturePercent)
            .Max();

    /// <summary>Whether wood and solution differ in temperature at some point.</summary>
    public bool IsWarmed =>
        Treating.WoodCelsius != Treating.Celsius || new[] { Across, Up }.Any(swept => swept.Input.IsTemperature);

    /// <summary>Points of the sweep.</summary>
    public int Points => Across.Values.Count * Up.Values.Count;
}

/// <summary>Predicts over two inputs.</summary>
public static class SweepPredictions
{
    /// <summary>Opens the table of a sweep, or starts it.</summary>
    /// <param name="path">Path of the table; its folder is made where it is missing.</param>
    /// <param name="request">What is asked; the table of another sweep is refused.</param>
    /// <param name="facts">Permeabilities, schedules and incising patterns.</param>
    /// <exception cref="InputRefusedException">What is asked cannot be, whatever the two inputs are; or the table is of another sweep, or cannot be read or written.</exception>
    public static SweepTable Open(string path, SweepRequest request, FactLibrary facts)
    {
        ArgumentNullException.ThrowIfNull(request);
        TreatingQuestion.Of(request.Treating, facts);
        return SweepTable.Open(path, InOneLine(request));
    }

    /// <summary>Whether some point asks for a depth that pieces or cores could meet.</summary>
    /// <param name="request">What is asked.</param>
    /// <param name="facts">Permeabilities, schedules and incising patterns.</param>
    /// <exception cref="InputRefusedException">What is asked cannot be, whatever the two inputs are.</exception>
    public static bool IsDepthAsked(SweepRequest request, FactLibrary facts)
    {
        ArgumentNullException.ThrowIfNull(request);
        var (across, up) = (request.Across, request.Up);
        return TreatingQuestion
            .Of(across.Input.With(up.Input.With(request.Treating, up.Values[0]), across.Values[0]), facts)
            .Prediction.IsDepthAsked;
    }

    /// <summary>Predicts every point that is not in the table yet, side by side, and adds each as it is finished: a sweep that was stopped continues.</summary>
    /// <param name="request">What is asked.</param>
    /// <param name="table">Its table.</param>
    /// <param name="facts">Permeabilities, schedules and incising patterns.</param>
    /// <param name="progress">Told of each point as it is finished; null where nobody looks.</param>
    /// <param name="stop">Stops between points.</param>
    /// <returns>Every point, row by row from the lowest value of the input up.</returns>
    /// <exception cref="InputRefusedException">The table cannot be written to.</exception>
    public static async Task<IReadOnlyList<SweptPoint>> RunAsync(
        SweepRequest request,
        SweepTable table,
        FactLibrary facts,
        IProgress<WorkDone>? progress,
        CancellationToken stop
    )
    {
        ArgumentNullException.ThrowIfNull(request);
        ArgumentNullException.ThrowIfNull(table);
        var (across, up) = (request.Across, request.Up);
        var done = table.Points.Select(point => (point.Column, point.Row)).ToHashSet();
        await EachItem.DoAsync(
            [
                .. from row in Enumerable.Range(0, up.Values.Count)
                from column in Enumerable.Range(0, across.Values.Count)
                where !done.Contains((column, row))
                select (Column: column, Row: row),
            ],
            at => $"{Named(across, at.Column)}, {Named(up, at.Row)}",
            at =>
            {
                table.Add(Point(request, at.Column, at.Row, facts, stop));
                return true;
            },
            progress,
            stop
        );
        return [.. table.Points.OrderBy(point => point.Row).ThenBy(point => point.Column)];
    }

    // The same line, the same sweep. The fingerprint tells apart what the line does not name, such as the plant's own schedules.
    private static string InOneLine(SweepRequest request)
    {
        var treating = request.Treating;
        var fingerprint = Convert.ToHexStringLower(SHA256.HashData(JsonSerializer.SerializeToUtf8Bytes(treating)));
        return string.Create(
            CultureInfo.InvariantCulture,
            $"{treating.Species.Name}, {treating.Section.Label}, {treating.Schedule}; {Axis(request.Across)}; {Axis(request.Up)}; {request.Pieces} pieces, seed {request.Seed}; {fingerprint[..16]}"
        );
    }

    private static string Axis(SweptInput swept) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{swept.Input.Name} {swept.Values[0]} to {swept.Values[^1]} in {swept.Values.Count}"
        );

    private static string Named(SweptInput swept, int index) =>
        $"{swept.Input.Name} {InputProblem.Number(swept.Values[index])}";

    private static SweptPoint Point(
        SweepRequest request,
        int column,
        int row,
        FactLibrary facts,
        CancellationToken stop
    )
    {
        var (x, y) = (request.Across.Values[column], request.Up.Values[row]);
        try
        {
            var asked = request.Across.Input.With(request.Up.Input.With(request.Treating, y), x);
            var question = TreatingQuestion.OfPieces(asked, facts).Prediction;
            var quick = QuickPrediction.Draw(
                question,
                WayRun.Table(question),
                request.Seed,
                request.Pieces,
                cancellation: stop
            );
            return new PredictedPoint(column, row, x, y, Measures(question, quick));
        }
        catch (InputRefusedException refused)
        {
            return new ImpossiblePoint(column, row, x, y, refused.Problems[0].ToString());
        }
    }

    private static SweptMeasures Measures(PredictionQuestion question, QuickPrediction quick) =>
        new()
        {
            PieceShare = question.IsDepthAsked ? quick.PieceShare.Value : null,
            CoreShare = question.IsDepthAsked ? quick.CoreShare.Value : null,
            MeanDepthMm = quick.MeanMm.Middle,
            LeastDepthMm = quick.LeastMm.Middle,
            UptakeLPerM3 = quick.UptakeLPerM3.Middle,
            ZoneLPerM3 = quick.ZoneLPerM3.Middle,
        };
}
