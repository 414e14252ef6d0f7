using Alburnum.Requirements;

namespace Alburnum.Records.Facts;

/// <summary>Reads <c>preservatives.yaml</c> and <c>marks.yaml</c>.</summary>
internal static class PreservativeFile
{
    private static readonly (string, Agent)[] Agents =
    [
        ("decay", Agent.Decay),
        ("soft rot", Agent.SoftRot),
        ("beetles", Agent.Beetles),
        ("termites", Agent.Termites),
        ("marine borers", Agent.MarineBorers),
        ("stain", Agent.Stain),
    ];

    private static readonly (string, bool)[] YesNo = [("yes", true), ("no", false)];

    // What leaves a preservative on the surface; every other way brings it into the wood.
    private static readonly HashSet<string> OnSurface = new(StringComparer.Ordinal)
    {
        "brush",
        "spray",
        "dip",
        "flow coat",
    };

    public static IReadOnlyList<Preservative> Read(FactRow root, ComponentCatalogue components)
    {
        var all = new List<Preservative>();
        var seen = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        foreach (var row in root.Rows("preservatives"))
        {
            var key = row.Text("key");
            if (!seen.Add(key))
                row.Refuse("key", key, "a unique key");
            var appliedBy = row.Texts("appliedBy");
            all.Add(
                new Preservative(
                    key,
                    row.Text("name"),
                    row.Texts("codes"),
                    row.Texts("alsoCalled"),
                    row.Text("kind"),
                    row.Texts("activeElements"),
                    [.. row.Texts("protectsAgainst").Select(word => AgentOf(row, word))],
                    row.Word("fixedInWood", YesNo),
                    appliedBy,
                    appliedBy.Count > 0 && appliedBy.All(OnSurface.Contains),
                    UseClassFile.UseClasses(row),
                    row.Texts("limits"),
                    [.. row.OptionalRows("restrictions").Select(law => Law(law, components))],
                    row.Provenance()
                )
                {
                    IsRemedial = row.Has("isRemedial") && row.Word("isRemedial", YesNo),
                    Carrier = row.Has("carrier") ? row.Text("carrier") : null,
                    NotIndoors = row.OptionalRow("notIndoors") is { } indoors ? Law(indoors, components) : null,
                    NotForParts = [.. row.OptionalRows("notFor").Select(parts => Law(parts, components))],
                }
            );
        }
        return all;
    }

    public static MarkCatalogue ReadMarks(FactRow root)
    {
        var useClasses = root.Texts("useClassSystems");
        IReadOnlyList<TreatmentMark> marks = [.. root.Rows("marks").Select(row => Mark(row, useClasses))];
        var systems = marks.Select(mark => mark.System).ToHashSet(StringComparer.Ordinal);
        foreach (var system in useClasses.Where(system => !systems.Contains(system)))
            root.Refuse("useClassSystems", system, "the system of a mark");
        return new(marks, [.. root.Rows("systemWords").Select(row => Words(row, systems))], useClasses);
    }

    private static TreatmentMark Mark(FactRow row, IReadOnlyList<string> useClassSystems)
    {
        UseClass? useClass = row.Has("useClass") ? row.Word("useClass", UseClassFile.Single) : null;
        var (name, system) = (row.Text("mark"), row.Text("system"));
        return new(name, system, row.Text("means"), useClass, row.Provenance())
        {
            // "UC4" and "HC4" are class 4; "UC4.1" is a part of it.
            IsUseClassItself =
                useClass is { } one
                && useClassSystems.Contains(system, StringComparer.Ordinal)
                && name.TrimStart('U', 'H', 'C') == one.Label(),
        };
    }

    private static SystemWords Words(FactRow row, HashSet<string> known)
    {
        var systems = row.Texts("systems");
        foreach (var system in systems.Where(system => !known.Contains(system)))
            row.Refuse("systems", system, "the system of a mark");
        return new(row.Texts("before"), row.OptionalText("begins"), systems, row.Texts("rulebooks"));
    }

    private static Restriction Law(FactRow row, ComponentCatalogue components)
    {
        var parts = row.Texts("parts");
        foreach (var part in parts.Where(part => components.Find(part) is NotFound<ComponentName>))
            row.Refuse("parts", part, "a name of a component");
        return new(row.Text("says"), row.Provenance())
        {
            Where = row.Texts("where"),
            ForbidsTreating = row.Has("forbidsTreating") && row.Word("forbidsTreating", YesNo),
            Parts = parts,
        };
    }

    private static Agent AgentOf(FactRow row, string word)
    {
        foreach (var (known, agent) in Agents)
            if (string.Equals(known, word, StringComparison.Ordinal))
                return agent;
        row.Refuse("protectsAgainst", word, string.Join(", ", Agents.Select(each => each.Item1)));
        return Agent.Decay;
    }
}
