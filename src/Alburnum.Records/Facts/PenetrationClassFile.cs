using Alburnum.Requirements;

namespace Alburnum.Records.Facts;

/// <summary>Reads named penetration classes: those of <c>penetration-classes.yaml</c>, and those of a rulebook's own.</summary>
internal static class PenetrationClassFile
{
    /// <summary>The classes of a file on top of those already known; a file's own class of the same name goes first.</summary>
    public static IReadOnlyDictionary<string, PenetrationDemand> Read(
        FactRow root,
        IReadOnlyDictionary<string, PenetrationDemand> known
    )
    {
        var own = new Dictionary<string, PenetrationDemand>(StringComparer.Ordinal);
        foreach (var row in root.OptionalRows("classes"))
        {
            var demand = DepthReader.ReadClass(row);
            if (!own.TryAdd(demand.Name, demand))
                row.Refuse("name", demand.Name, "a unique name");
        }
        foreach (var (name, demand) in known)
            own.TryAdd(name, demand);
        return own;
    }
}
