namespace Alburnum.DrawnSections;

/// <summary>An invented batch: its photographs go to the folder of its name beside this project.</summary>
/// <param name="Folder">Folder under examples/.</param>
/// <param name="Pieces">One scene a photograph.</param>
public sealed record ExampleCase(string Folder, IReadOnlyList<SectionScene> Pieces);

/// <summary>The three batches of the Thornhollow estate.</summary>
public static class ExampleCases
{
    /// <summary>Incised square posts for an orchard, sawn from the outside of big spruces: every face well past 6 mm.</summary>
    public static ExampleCase OrchardPosts { get; } =
        new(
            "orchard-posts",
            new Batch(11, Timber.Spruce, SectionShape.Rectangle(100, 100))
            {
                PithFrom = 1.3,
                PithTo = 2.4,
                IsIncised = true,
            }.Of([8.6, 9.4, 8.9, 10.2, 9.1, 8.7, 9.8, 9.3])
        );

    /// <summary>Sawn spruce joists for a footbridge: most faces short of 6 mm, some far short.</summary>
    public static ExampleCase FootbridgeJoists { get; } =
        new(
            "footbridge-joists",
            new Batch(23, Timber.Spruce, SectionShape.Rectangle(75, 150)) { PithFrom = 0.1, PithTo = 0.9 }.Of([
                1.6,
                2.4,
                3.1,
                1.2,
                2.8,
                0.9,
                3.6,
                2.1,
            ])
        );

    /// <summary>Round larch purlins for a barn: three pieces so near to 6 mm that a photograph cannot tell.</summary>
    public static ExampleCase BarnPurlins { get; } =
        new(
            "barn-purlins",
            new Batch(37, Timber.Larch, SectionShape.Round(120)) { PithTo = 0.06, SapwoodMm = 25 }.Of([
                7.3,
                6.02,
                6.08,
                7.9,
                6.05,
                6.9,
            ])
        );

    public static IReadOnlyList<ExampleCase> All { get; } = [OrchardPosts, FootbridgeJoists, BarnPurlins];
}
