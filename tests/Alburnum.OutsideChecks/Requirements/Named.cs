using Alburnum.Requirements;

namespace Alburnum.OutsideChecks.Requirements;

/// <summary>Components by the name that they go by.</summary>
internal static class Named
{
    /// <summary>The one component of that name.</summary>
    public static Component Get(this ComponentCatalogue components, string name) =>
        Assert.IsType<Component>(components.Named(name));
}
