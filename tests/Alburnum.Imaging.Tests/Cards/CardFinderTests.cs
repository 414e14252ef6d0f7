using Alburnum.DrawnSections;
using Alburnum.Imaging.Cards;
using Alburnum.Imaging.Photographs;
using Alburnum.Imaging.Reading;
using Alburnum.Imaging.Tests.Accuracy;

namespace Alburnum.Imaging.Tests.Cards;

public sealed class CardProbeTests
{
    [Theory]
    [InlineData(Stratum.Easy)]
    [InlineData(Stratum.Ordinary)]
    [InlineData(Stratum.Hard)]
    public void Probe(Stratum stratum)
    {
        var (from, to) = (
            int.Parse(Environment.GetEnvironmentVariable("FROM") ?? "901"),
            int.Parse(Environment.GetEnvironmentVariable("TO") ?? "912")
        );
        var below = double.Parse(Environment.GetEnvironmentVariable("BELOW") ?? "0");
        var folder = "/tmp/card/" + stratum;
        Directory.CreateDirectory(folder);
        var found = 0;
        for (var seed = from; seed <= to; seed++)
        {
            var scene = CardScenes.Of(stratum, seed, below, 2);
            var photograph = TestPhotographs.Of(scene with { Orientation = 1 });
            File.WriteAllBytes($"{folder}/{scene.Name}.jpg", photograph.Jpeg);
            using var file = PhotographFile.Open("x.jpg", photograph.Jpeg);
            using var photo = file.Decode(1);
            CardFinder.Find(photo);
            var watch = System.Diagnostics.Stopwatch.StartNew();
            var card = CardFinder.Find(photo);
            var ms = watch.Elapsed.TotalMilliseconds;
            Console.WriteLine(
                $"{scene.Name} {scene.Shape.Name} {string.Join('x', scene.Shape.SizesMm)} ppm {scene.Lens.PixelsPerMm:0.0} tilt {scene.Lens.Tilt * 57.3:0} found {card is not null} {ms:0.0} ms"
            );
            if (card is null)
                continue;
            found++;
            if (below == 0)
            {
                var off = scene
                    .Card!.Marks.Select(scene.Lens.Project)
                    .Zip(card.MarksPx, (a, b) => $"{b.X - a.X:0.00},{b.Y - a.Y:0.00}");
                Console.WriteLine($"   marks {string.Join(' ', off)} u {card.MarkPx:0.00}");
            }
            if (Environment.GetEnvironmentVariable("QUICK") is not null)
                continue;
            var given = photograph.Read(photograph.AskedWithCorners());
            Say("given", given.Outcome);
            Say("self", photograph.Read(photograph.Asked()).Outcome);
        }
        Console.WriteLine($"{stratum} found {found} of {to - from + 1}");
    }

    private static void Say(string how, ReadingOutcome outcome)
    {
        if (outcome is Read r)
            Console.WriteLine(
                $"   {how} {r.Scale.Basis} {r.Scale.Section.SizesMm[0]:0.00} of nominal; {string.Join(' ', r.Quality.Findings.Select(f => f.GetType().Name))} lens {r.Scale.LensBow}"
            );
        else if (outcome is NotDetermined n)
            Console.WriteLine(
                $"   {how} ended {n.Fault.GetType().Name} {n.Scale?.Basis} {n.Scale?.Section.SizesMm[0]:0.00}"
            );
    }
}
