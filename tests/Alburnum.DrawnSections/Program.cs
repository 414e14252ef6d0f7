using System.Globalization;
using Alburnum.DrawnSections;

const string Usage = """
    Draws photographs of sprayed cut ends whose true depths are known.

      Alburnum.DrawnSections                      draw the example cases anew, into their folders
      Alburnum.DrawnSections scene [options]      draw scenes of the accuracy test set
        --stratum easy|ordinary|hard    how difficult (ordinary)
        --seed N or N-M                 which (1)
        --megapixels X                  size of the photograph (the seed decides)
        --drawn-wood                    leave real wood photographs aside
        --heartwood clear|faint|none|stained
                                        scenes of the heartwood test set instead
        --sapwood bare|indicatoronly|heartwoodreagent|allsapwood|allsapwoodindicator
                                        scenes of the untreated test set instead
        --bow X                         bow of the lens at the picture's corner, as a share
        --bench none|touching|halfout|offcut|tool
                                        several sections on one photograph instead, with --ground NAME and --round
        --out DIR                       where to (here)
    """;

return args switch
{
    [] => DrawCases(),
    ["scene", .. var options] => DrawScenes(options),
    _ => Refuse(),
};

static int DrawCases()
{
    var examples = Repository.Folder("examples");
    foreach (var example in ExampleCases.All)
    {
        var folder = Path.Combine(examples, example.Folder);
        Directory.CreateDirectory(folder);
        foreach (var piece in example.Pieces)
        {
            File.WriteAllBytes(Path.Combine(folder, piece.Name + ".jpg"), piece.Photograph());
            Console.WriteLine($"{example.Folder}/{piece.Name}.jpg");
        }
        var truths = new SortedDictionary<string, SectionTruth>(
            example.Pieces.ToDictionary(piece => piece.Name + ".jpg", piece => piece.Truth(), StringComparer.Ordinal),
            StringComparer.Ordinal
        );
        File.WriteAllText(Path.Combine(folder, "truth.json"), TruthFile.Write(truths));
    }
    return 0;
}

static int DrawScenes(string[] options)
{
    var stratum = Enum.Parse<Stratum>(Option(options, "--stratum") ?? "ordinary", ignoreCase: true);
    var folder = Option(options, "--out") ?? ".";
    var size = Option(options, "--megapixels") is { } text
        ? double.Parse(text, CultureInfo.InvariantCulture)
        : (double?)null;
    var kind = Option(options, "--heartwood") is { } named
        ? Enum.Parse<HeartwoodKind>(named, ignoreCase: true)
        : (HeartwoodKind?)null;
    var untreated = Option(options, "--sapwood") is { } sprayed
        ? Enum.Parse<SapwoodKind>(sprayed, ignoreCase: true)
        : (SapwoodKind?)null;
    var bow = Option(options, "--bow") is { } number
        ? double.Parse(number, CultureInfo.InvariantCulture)
        : (double?)null;
    var photos = options.Contains("--drawn-wood") ? [] : WoodPhotos.Here();
    Directory.CreateDirectory(folder);
    if (Option(options, "--bench") is { } trouble)
        return DrawBenches(options, folder, Enum.Parse<BenchTrouble>(trouble, ignoreCase: true), size ?? 4);
    foreach (var seed in Seeds(Option(options, "--seed") ?? "1"))
    {
        var scene = (kind, untreated) switch
        {
            ({ } heartwood, _) => HeartwoodScenes.Of(heartwood, seed),
            (_, { } sapwood) => SapwoodScenes.Of(sapwood, seed),
            _ => StratifiedScenes.Of(stratum, seed, photos, size),
        };
        if (bow is { } share)
            scene = scene with { Lens = scene.Lens.Bowed(share) };
        File.WriteAllBytes(Path.Combine(folder, scene.Name + ".jpg"), scene.Photograph());
        File.WriteAllText(Path.Combine(folder, scene.Name + ".truth.json"), TruthFile.Write(scene.Truth()));
        if (kind is not null || untreated is not null)
            File.WriteAllText(
                Path.Combine(folder, scene.Name + ".heartwood.json"),
                TruthFile.Write(HeartwoodTruth.BorderPx(scene))
            );
        Console.WriteLine(scene.Name);
    }
    return 0;
}

static int DrawBenches(string[] options, string folder, BenchTrouble trouble, double megapixels)
{
    var ground = Enum.Parse<Ground>(Option(options, "--ground") ?? "GreyCard", ignoreCase: true);
    foreach (var seed in Seeds(Option(options, "--seed") ?? "1"))
    {
        var bench = BenchScenes.Of(seed, options.Contains("--round"), ground, trouble, megapixels);
        File.WriteAllBytes(Path.Combine(folder, bench.Name + ".jpg"), bench.Photograph());
        var truths = new SortedDictionary<string, SectionTruth>(StringComparer.Ordinal);
        foreach (var (k, truth) in bench.Truths().Index())
            truths.Add($"{bench.Name}.jpg #{k + 1}", truth);
        File.WriteAllText(Path.Combine(folder, bench.Name + ".truth.json"), TruthFile.Write(truths));
        Console.WriteLine(bench.Name);
    }
    return 0;
}

static int Refuse()
{
    Console.Error.WriteLine(Usage);
    return 2;
}

static string? Option(string[] options, string name)
{
    var place = Array.IndexOf(options, name);
    return place >= 0 && place + 1 < options.Length ? options[place + 1] : null;
}

static IEnumerable<int> Seeds(string text)
{
    var ends = text.Split('-').Select(end => int.Parse(end, CultureInfo.InvariantCulture)).ToList();
    return Enumerable.Range(ends[0], ends[^1] - ends[0] + 1);
}
