using Alburnum.Records.Facts;
using Alburnum.Requirements;
using Alburnum.Tests.Shared;
using Alburnum.Timber;

namespace Alburnum.OutsideChecks.Requirements;

/// <summary>The shipped facts, and short ways to ask them.</summary>
internal static class Shipped
{
    private static readonly Lazy<FactLibrary> Loaded = new(() => new FactLibrary(Repository.At("data")));

    public static FactLibrary Library => Loaded.Value;

    public static Enquiry Sawn(string species, UseClass useClass, int? life = null, bool? exposedHeartwood = null) =>
        new()
        {
            Section = new RectangularSection(75, 75),
            Species = Library.Species.Get(species),
            UseClasses = [useClass],
            Life = life is { } years ? new DesiredServiceLife(years) : null,
            HasExposedHeartwood = exposedHeartwood,
        };

    public static Answer Ask(string rulebook, Enquiry enquiry) => Library.Rulebooks.Named(rulebook).Answer(enquiry);

    /// <summary>The conditions and the advice that the rulebook's rows add to a demand.</summary>
    public static IEnumerable<string> AdviceOn(Requirement demand) =>
        demand
            .Conditions.OfType<RowAdvises>()
            .Select(condition => condition.Row.Demand)
            .OfType<Advice>()
            .Select(advice => advice.Sentence);

    public static Requirement Demand(string rulebook, Enquiry enquiry) =>
        Assert.IsType<Required>(Ask(rulebook, enquiry)).Requirement;

    public static DepthRule AllSapwood => new ShareOfZone(WoodZone.Sapwood, 1);

    public static DepthRule Sapwood(double mm) => new LeastDepth(WoodZone.Sapwood, mm);
}
