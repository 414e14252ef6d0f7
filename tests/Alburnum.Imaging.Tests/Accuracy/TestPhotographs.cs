using System.Globalization;
using Alburnum.DrawnSections;
using Quick = Alburnum.Tests.Shared.Quick;

namespace Alburnum.Imaging.Tests.Accuracy;

/// <summary>One photograph of the test set: its scene, its bytes and its truth.</summary>
internal sealed record TestPhotograph(SectionScene Scene, byte[] Jpeg, SectionTruth Truth);

/// <summary>The test set: which scenes it holds, and the drawing of them, kept between runs.</summary>
internal static class TestPhotographs
{
    /// <summary>Where it is to be quick, seeds that this divides: among them some of each size, held to the same limits.</summary>
    private const int QuickStep = 3;

    private static readonly IReadOnlyList<Raster> WoodPhotographs = WoodPhotos.Here();

    /// <summary>Seeds of a stratum; each is one photograph.</summary>
    public static IReadOnlyList<int> Seeds(Stratum stratum) =>
        [
            .. Enumerable
                .Range(1, stratum == Stratum.Ordinary ? 76 : 66)
                .Where(seed => !Quick.IsAsked || seed % QuickStep == 0),
        ];

    /// <summary>Draws a photograph, or reads the one drawn by an earlier run of the same build.</summary>
    public static TestPhotograph Of(Stratum stratum, int seed)
    {
        // Now and then what a phone really stores; mostly less, for time.
        double? megapixels =
            seed % 33 == 0 ? 12
            : seed % 11 == 0 ? 5
            : null;
        return Of(StratifiedScenes.Of(stratum, seed, WoodPhotographs, megapixels));
    }

    /// <summary>The same for any scene; its name is its own.</summary>
    public static TestPhotograph Of(SectionScene scene) =>
        new(scene, Drawn(scene.Name, scene.Photograph), scene.Truth());

    /// <summary>A photograph of several sections; the scene's name is its own.</summary>
    public static byte[] Of(BenchScene bench) => Drawn(bench.Name, bench.Photograph);

    private static byte[] Drawn(string name, Func<byte[]> photograph)
    {
        var kept = Path.Combine(Kept, name + ".jpg");
        if (!File.Exists(kept))
        {
            Directory.CreateDirectory(Kept);
            var unfinished = kept + "." + Environment.ProcessId.ToString(CultureInfo.InvariantCulture);
            File.WriteAllBytes(unfinished, photograph());
            File.Move(unfinished, kept, overwrite: true);
        }
        return File.ReadAllBytes(kept);
    }

    /// <summary>Drawn photographs belong to one build of the drawing program, and to the wood it was given.</summary>
    private static string Kept { get; } =
        Path.Combine(
            Repository.Folder("artifacts"),
            "accuracy",
            string.Create(
                CultureInfo.InvariantCulture,
                $"{typeof(SectionScene).Assembly.ManifestModule.ModuleVersionId:N}-{WoodPhotographs.Count}"
            )
        );
}
