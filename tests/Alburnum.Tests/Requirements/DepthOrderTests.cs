using Alburnum.Requirements;
using CsCheck;

namespace Alburnum.Tests.Requirements;

public sealed class DepthOrderTests
{
    private static readonly Gen<DepthRule> Leaves = Gen.OneOf<DepthRule>(
        Gen.Const<DepthRule>(new NoDepth()),
        Gen.Select(
            Gen.Enum<WoodZone>(),
            Gen.Int[1, 30],
            Gen.Int[1, 4],
            (zone, mm, quarters) => (DepthRule)new LeastDepth(zone, mm, quarters / 4.0)
        ),
        Gen.Select(
            Gen.Enum<WoodZone>(),
            Gen.Int[1, 4],
            (zone, quarters) => (DepthRule)new ShareOfZone(zone, quarters / 4.0)
        )
    );

    private static readonly Gen<DepthRule> Trees = Gen.OneOf(
        Leaves,
        Leaves.List[2, 3].Select(parts => (DepthRule)new AllOf(parts)),
        Leaves.List[2, 3].Select(parts => (DepthRule)new AnyOf(parts))
    );

    /// <summary>A slab of wood, so many mm deep in each zone, with the depth reached over each quarter of its length.</summary>
    private static readonly Gen<(int SapwoodMm, int HeartwoodMm, int[] Reached)> Slabs = Gen.Select(
        Gen.Int[1, 30],
        Gen.Int[1, 30],
        Gen.Int[0, 60].Array[4],
        (sapwood, heartwood, reached) => (sapwood, heartwood, reached)
    );

    [Fact]
    public void What_meets_the_stricter_rule_meets_the_looser_one() =>
        Gen.Select(Trees, Trees, Slabs)
            .Sample(
                each =>
                    !DepthOrder.Implies(each.Item1, each.Item2)
                    || !Meets(each.Item1, each.Item3)
                    || Meets(each.Item2, each.Item3),
                iter: 50_000
            );

    [Fact]
    public void Every_rule_implies_itself() => Trees.Sample(rule => DepthOrder.Implies(rule, rule));

    [Fact]
    public void No_rule_asks_for_less_than_itself() => Trees.Sample(rule => !DepthOrder.AsksLess(rule, rule));

    [Fact]
    public void Six_millimetres_ask_for_less_than_twelve_and_than_all_the_sapwood()
    {
        var six = new LeastDepth(WoodZone.Sapwood, 6);
        Assert.True(DepthOrder.AsksLess(six, new LeastDepth(WoodZone.Sapwood, 12)));
        Assert.True(DepthOrder.AsksLess(six, new ShareOfZone(WoodZone.Sapwood, 1)));
        Assert.True(DepthOrder.AsksLess(new NoDepth(), six));
        Assert.False(DepthOrder.AsksLess(six, new LeastDepth(WoodZone.ExposedHeartwood, 12)));
    }

    // Each zone of the slab is read from its own face; the whole is as deep as both zones.
    private static bool Meets(DepthRule rule, (int SapwoodMm, int HeartwoodMm, int[] Reached) slab) =>
        rule switch
        {
            NoDepth => true,
            AllOf all => all.Parts.All(part => Meets(part, slab)),
            AnyOf any => any.Parts.Any(part => Meets(part, slab)),
            // A zone thinner than the depth asked for is judged by its whole.
            LeastDepth depth => Share(slab.Reached, Math.Min(depth.DepthMm, Thickness(depth.Zone, slab)))
                >= depth.Coverage,
            ShareOfZone share => Share(slab.Reached, share.Share * Thickness(share.Zone, slab)) >= 1,
            _ => throw new ArgumentOutOfRangeException(nameof(rule)),
        };

    private static double Share(int[] reached, double mm) =>
        reached.Count(depth => depth >= mm) / (double)reached.Length;

    private static double Thickness(WoodZone zone, (int SapwoodMm, int HeartwoodMm, int[] Reached) slab) =>
        zone switch
        {
            WoodZone.Sapwood => slab.SapwoodMm,
            WoodZone.ExposedHeartwood => slab.HeartwoodMm,
            _ => slab.SapwoodMm + slab.HeartwoodMm,
        };
}
