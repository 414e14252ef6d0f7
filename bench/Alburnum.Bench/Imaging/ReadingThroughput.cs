using System.Diagnostics;
using System.Globalization;
using Alburnum.Imaging;
using Alburnum.Imaging.Reading;
using Alburnum.Records.Facts;

namespace Alburnum.Bench.Imaging;

/// <summary>Photographs a second on one core and on all, corners given, and whether a long batch stays flat in memory.</summary>
internal static class ReadingThroughput
{
    private const int Photographs = 24;
    private const int Batch = 200;

    public static void Run()
    {
        var photograph = BenchPhotograph.Draw(megapixels: 12);
        var request = new ReadingRequest
        {
            Section = photograph.Section,
            OutlinePx = photograph.Corners,
            Candidates = new FactLibrary(Path.Combine(AppContext.BaseDirectory, "data")).Indicators,
        };
        Read(photograph, request, 60, cores: Environment.ProcessorCount);
        var (oneClock, oneProcessor) = Read(photograph, request, Photographs, cores: 1);
        for (var cores = 1; cores <= Environment.ProcessorCount; cores++)
        {
            var (clock, processor) = Read(photograph, request, Photographs, cores);
            Say(
                $"{cores} at a time: {Photographs / clock:0.0} photographs a second, {oneClock / clock:0.00} times one; {1000 * processor / Photographs:0} ms of processor time each ({processor / oneProcessor:0.00} times)"
            );
        }
        for (var read = 0; read < Batch; read += Batch / 4)
        {
            Read(photograph, request, Batch / 4, Environment.ProcessorCount);
            using var process = Process.GetCurrentProcess();
            Say(
                $"after {read + (Batch / 4)} more: {process.WorkingSet64 / 1048576} MB, at most {process.PeakWorkingSet64 / 1048576} MB"
            );
        }
    }

    private static (double ClockSeconds, double ProcessorSeconds) Read(
        BenchPhotograph photograph,
        ReadingRequest request,
        int photographs,
        int cores
    )
    {
        using var process = Process.GetCurrentProcess();
        var before = process.TotalProcessorTime;
        var started = Stopwatch.GetTimestamp();
        Parallel.For(
            0,
            photographs,
            new ParallelOptions { MaxDegreeOfParallelism = cores },
            // A batch reads each photograph from its file: bytes of its own.
            _ => SectionReader.Read("bench.jpg", (byte[])photograph.Jpeg.Clone(), request, CancellationToken.None)
        );
        var clock = Stopwatch.GetElapsedTime(started).TotalSeconds;
        process.Refresh();
        return (clock, (process.TotalProcessorTime - before).TotalSeconds);
    }

    private static void Say(FormattableString line) => Console.WriteLine(line.ToString(CultureInfo.InvariantCulture));
}
