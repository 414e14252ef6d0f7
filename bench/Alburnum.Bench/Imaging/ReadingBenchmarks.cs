using Alburnum.Imaging;
using Alburnum.Imaging.Reading;
using Alburnum.Records.Facts;
using BenchmarkDotNet.Attributes;
using OpenCvSharp;
using SkiaSharp;

namespace Alburnum.Bench.Imaging;

/// <summary>
/// One 12-megapixel photograph from bytes to depth profile, against decoding it alone and against the peer.
/// One core; the ratios within one run are what counts.
/// </summary>
[MemoryDiagnoser]
[SimpleJob(warmupCount: 15, iterationCount: 15, invocationCount: 1)]
public class ReadingBenchmarks
{
    public static void Run() => BenchmarkDotNet.Running.BenchmarkRunner.Run<ReadingBenchmarks>();

    private byte[] _jpeg = [];
    private ReadingRequest _given = null!;
    private ReadingRequest _byItself = null!;
    private Point2f[] _corners = [];
    private Mat _decoded = null!;

    [GlobalSetup]
    public void Draw()
    {
        Cv2.SetNumThreads(1);
        var photograph = BenchPhotograph.Draw(megapixels: 12);
        _jpeg = photograph.Jpeg;
        _byItself = new ReadingRequest
        {
            Section = photograph.Section,
            Candidates = new FactLibrary(Path.Combine(AppContext.BaseDirectory, "data")).Indicators,
        };
        _given = _byItself with { OutlinePx = photograph.Corners };
        _corners = [.. photograph.Corners.Select(p => new Point2f((float)p.X, (float)p.Y))];
        _decoded = Cv2.ImDecode(_jpeg, ImreadModes.Color);
    }

    [Benchmark(Baseline = true, Description = "decoding alone, OpenCV")]
    public int DecodingWithOpenCv()
    {
        using var decoded = Cv2.ImDecode(_jpeg, ImreadModes.Color);
        return decoded.Width;
    }

    [Benchmark(Description = "decoding alone, SkiaSharp")]
    public int DecodingWithSkia()
    {
        using var decoded = SKBitmap.Decode(_jpeg);
        return decoded.Width;
    }

    [Benchmark(Description = "reading, corners given")]
    public object ReadingCornersGiven() => SectionReader.Read("bench.jpg", _jpeg, _given, CancellationToken.None);

    [Benchmark(Description = "reading, outline by itself")]
    public object ReadingByItself() => SectionReader.Read("bench.jpg", _jpeg, _byItself, CancellationToken.None);

    [Benchmark(Description = "peer, after decoding")]
    public object PeerAfterDecoding() =>
        OpenCvPeer.Depths(_decoded, _corners, _given.Section.ThicknessMm, _given.Section.ThicknessMm);

    [Benchmark(Description = "peer, whole")]
    public object PeerWhole()
    {
        using var decoded = Cv2.ImDecode(_jpeg, ImreadModes.Color);
        return OpenCvPeer.Depths(decoded, _corners, _given.Section.ThicknessMm, _given.Section.ThicknessMm);
    }
}
