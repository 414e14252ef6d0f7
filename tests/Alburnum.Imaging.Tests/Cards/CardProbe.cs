using System.Collections.Concurrent;
using Alburnum.DrawnSections;
using Alburnum.Imaging.Cards;
using Alburnum.Imaging.Photographs;
using Alburnum.Imaging.Reading;
using Alburnum.Imaging.Tests.Accuracy;

namespace Alburnum.Imaging.Tests.Cards;

public sealed class CardProbeTests
{
    private static string Env(string name, string other) => Environment.GetEnvironmentVariable(name) ?? other;

    [Fact]
    public void Probe()
    {
        var (from, to) = (int.Parse(Env("FROM", "901")), int.Parse(Env("TO", "912")));
        var below = double.Parse(Env("BELOW", "0"));
        var isTilted = Env("TILT", "") != "";
        var lines = new ConcurrentDictionary<(string, int), string>();
        foreach (var stratum in Env("STRATA", "Easy,Ordinary,Hard").Split(',').Select(Enum.Parse<Stratum>))
            Parallel.For(
                from,
                to + 1,
                new ParallelOptions { MaxDegreeOfParallelism = 2 },
                seed =>
                {
                    var bare = StratifiedScenes.Of(stratum, seed, [], 2) with { Orientation = 1 };
                    if (isTilted)
                    {
                        if (bare.Shape.Name != "round")
                            return;
                        bare = bare with { Lens = bare.Lens with { Tilt = (16 + seed % 9) * Math.PI / 180 } };
                    }
                    var scene = CardScenes.Beside(bare, seed, below, $"probe-{stratum}-{seed}-{below}-{isTilted}");
                    var photograph = TestPhotographs.Of(scene);
                    using var file = PhotographFile.Open("x.jpg", photograph.Jpeg);
                    using var photo = file.Decode(1);
                    CardFinder.Find(photo);
                    var watch = System.Diagnostics.Stopwatch.StartNew();
                    var card = CardFinder.Find(photo);
                    var ms = watch.Elapsed.TotalMilliseconds;
                    var line =
                        $"{stratum} {seed} {scene.Shape.Name} {string.Join('x', scene.Shape.SizesMm)} tilt {scene.Lens.Tilt * 57.3:0} found {card is not null} {ms:0.0} ms";
                    if (card is not null)
                    {
                        var off =
                            below > 0
                                ? 0
                                : scene
                                    .Card!.Marks.Select(scene.Lens.Project)
                                    .Zip(card.MarksPx, (a, b) => double.Hypot(b.X - a.X, b.Y - a.Y))
                                    .Max();
                        line += $" off {off:0.00} u {card.MarkPx:0.00}";
                    }
                    line +=
                        Say("given", photograph, photograph.AskedWithCorners())
                        + Say("self", photograph, photograph.Asked());
                    if (isTilted)
                    {
                        var without = TestPhotographs.Of(scene with { Card = null, Name = scene.Name + "-without" });
                        line += Say("WITHOUT", without, without.AskedWithCorners());
                    }
                    lines[(stratum.ToString(), seed)] = line;
                }
            );
        foreach (var (_, line) in lines.OrderBy(l => l.Key))
            Console.WriteLine(line);
    }

    private static string Say(string how, TestPhotograph photograph, ReadingRequest request)
    {
        var outcome = photograph.Read(request).Outcome;
        if (outcome is not Read r)
            return $" | {how} ended {((NotDetermined)outcome).Fault.GetType().Name}";
        var size = photograph.Truth.SectionMm.Max();
        var mean = r.Profile.Statistics.MeanMm;
        var share = r
            .Budget.MeanMm.Components.Where(c => c.Cause.Key is "card-size" or "nominal-size")
            .Select(c => c.Contribution / mean.Value)
            .FirstOrDefault();
        var pose = r
            .Budget.MeanMm.Components.Where(c => c.Cause.Key == "pose")
            .Select(c => c.Contribution / 0.3)
            .FirstOrDefault();
        var said =
            $" | {how} {r.Scale.Basis} {r.Scale.Section.SizesMm.Max() / size - 1:0.0000} u {share:0.0000} {string.Join(',', r.Quality.Findings.Select(f => f.GetType().Name))}";
        if (photograph.Truth.Shape == "round")
            said += $" once {Once(photograph, r):0.00} pose {pose:0.00}";
        return said;
    }

    private static double Once(TestPhotograph photograph, Read read)
    {
        var truth = photograph.Truth.Faces[0];
        var face = photograph.Scene.Shape.Faces[0];
        var first = Enumerable
            .Range(0, 1440)
            .MinBy(k =>
            {
                var p = photograph.Scene.Lens.Project(face.At(face.LengthMm * k / 1440));
                return double.Hypot(p.X - read.Outline.PointsPx[0].X, p.Y - read.Outline.PointsPx[0].Y);
            });
        var shift = face.LengthMm * first / 1440;
        var profile = read.Profile.Faces[0];
        double c = 0,
            s = 0;
        var n = 0;
        for (var i = 0; i < profile.PositionsMm.Count; i++)
        {
            if (
                profile.Excluded[i]
                || truth.DepthAtMm((profile.PositionsMm[i] + shift) % face.LengthMm) is not { } depth
            )
                continue;
            var (sin, cos) = Math.SinCos(2 * Math.PI * i / profile.PositionsMm.Count);
            var e = profile.DepthMm[i] - depth;
            (c, s, n) = (c + e * cos, s + e * sin, n + 1);
        }
        return n == 0 ? 0 : 2 * double.Hypot(c, s) / n;
    }
}
