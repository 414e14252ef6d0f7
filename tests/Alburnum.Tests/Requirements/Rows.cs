using Alburnum.Requirements;
using Alburnum.Timber;

namespace Alburnum.Tests.Requirements;

/// <summary>Small rulebooks for the tests of this folder; invented, and resting on no document.</summary>
internal static class Rows
{
    public static readonly Provenance Published = new(Standing.Published, "Own table", "1", "row 1", "");
    public static readonly Provenance Remembered = new(Standing.FromMemory, "Own table", "1", "", "");

    public static readonly Species Pine = Wood("test pine", "Pinus probata", 1, 3);
    public static readonly Species Spruce = Wood("test spruce", "Picea probata", 3, 3);

    public static PenetrationDemand Depth(double mm) =>
        new(FormattableString.Invariant($"{mm} mm"), new LeastDepth(WoodZone.Sapwood, mm), null, null);

    public static Row DepthRow(string key, Demand demand, IReadOnlyList<Condition> when, params string[] overrides) =>
        new(key, Subject.Penetration, when, demand, overrides, Published);

    public static Row Of(Subject subject, string key, Demand demand, params IReadOnlyList<Condition> when) =>
        new(key, subject, when, demand, [], Published);

    public static OneOf Use(params string[] classes) => new(Field.UseClass, classes);

    public static Between Life(int years) => new(Field.Life, years, true, years, true);

    public static Between Thickness(double from, double below) => new(Field.Thickness, from, true, below, false);

    public static Rulebook Book(params IReadOnlyList<Row> rows) =>
        new(rows)
        {
            Name = "own-1",
            Title = "Own table",
            Document = "Own",
            Edition = "1",
            Lives = [15, 30],
        };

    public static Fact<ClassRange> Cell(int low, int high) => new(new ClassRange(low, high), Remembered);

    private static Species Wood(string name, string botanical, int sapwood, int heartwood) =>
        new(
            name,
            [botanical],
            WoodType.Softwood,
            Cell(3, 4),
            Cell(heartwood, heartwood),
            Cell(sapwood, sapwood),
            null,
            null,
            ""
        );
}
