using Alburnum.DrawnSections;
using Alburnum.Imaging.Geometry;
using Alburnum.Timber;

namespace Alburnum.Bench.Imaging;

/// <summary>One ordinary 12-megapixel photograph of a sawn section, drawn once and kept under artifacts/.</summary>
internal sealed record BenchPhotograph(byte[] Jpeg, SectionTruth Truth)
{
    public static BenchPhotograph Draw(double megapixels)
    {
        var scene = Enumerable
            .Range(1, 100)
            .Select(seed => StratifiedScenes.Of(Stratum.Easy, seed, [], megapixels))
            .First(candidate => candidate.Shape.Name == "square" && candidate.Indicator.Name == "copper-blue") with
        {
            FullColour = false,
            JpegQuality = 92,
        };
        var kept = Path.Combine(
            Repository.Folder("artifacts"),
            "bench",
            $"{scene.Lens.WidthPx}x{scene.Lens.HeightPx}.jpg"
        );
        if (!File.Exists(kept))
        {
            Directory.CreateDirectory(Path.GetDirectoryName(kept)!);
            File.WriteAllBytes(kept, scene.Photograph());
        }
        return new(File.ReadAllBytes(kept), scene.Truth());
    }

    public RectangularSection Section => new(Truth.SectionMm[0], Truth.SectionMm[1]);

    public IReadOnlyList<PointPx> Corners => [.. Truth.OutlinePx.Select(p => new PointPx(p.X, p.Y))];
}
