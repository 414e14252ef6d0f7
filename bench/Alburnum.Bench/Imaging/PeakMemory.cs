using System.Diagnostics;
using System.Globalization;
using Alburnum.Imaging;
using Alburnum.Imaging.Reading;
using Alburnum.Records.Facts;

namespace Alburnum.Bench.Imaging;

/// <summary>Peak memory of the process over one 24-megapixel photograph, then over many readings of it.</summary>
internal static class PeakMemory
{
    private const int Readings = 50;

    public static void Run()
    {
        var photograph = BenchPhotograph.Draw(megapixels: 24);
        // Drawing takes more memory than reading: measure in a process that found the picture already drawn.
        var request = new ReadingRequest
        {
            Section = photograph.Section,
            OutlinePx = photograph.Corners,
            Candidates = new FactLibrary(Path.Combine(AppContext.BaseDirectory, "data")).Indicators,
        };
        for (var k = 1; k <= Readings; k++)
        {
            SectionReader.Read("bench.jpg", photograph.Jpeg, request, CancellationToken.None);
            if (k is 1 or 2 or 5 || k % 10 == 0)
                Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"after {k} readings: peak {Peak()} MB"));
        }
    }

    private static long Peak()
    {
        using var process = Process.GetCurrentProcess();
        return process.PeakWorkingSet64 / (1024 * 1024);
    }
}
