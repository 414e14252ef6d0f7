using ArchUnitNET.Loader;
using ArchUnitNET.xUnitV3;
using static ArchUnitNET.Fluent.ArchRuleDefinition;
using static ArchUnitNET.Fluent.Slices.SliceRuleDefinition;

namespace Alburnum.Imaging.Tests;

/// <summary>The one way through the folders: geometry first, the reader last.</summary>
public sealed class FolderOrderTests
{
    /// <summary>Each folder may see those before it, and no other.</summary>
    private static readonly string[] Order =
    [
        "Outcomes",
        "Geometry",
        "Photographs",
        "Cards",
        "Reading",
        "Rectification",
        "Colour",
        "Outline",
        "Front",
        "Rings",
        "Judging",
        "Zones",
        "Pictures",
        "Stages",
    ];

    private static readonly ArchUnitNET.Domain.Architecture Room = new ArchLoader()
        .LoadAssemblies(typeof(SectionReader).Assembly)
        .Build();

    [Fact]
    public void No_folder_depends_on_another_in_a_circle() =>
        Slices().Matching("Alburnum.Imaging.(*)").Should().BeFreeOfCycles().Check(Room);

    [Fact]
    public void Every_folder_has_its_place_in_the_order() =>
        Assert.Equal(
            Order.Order(StringComparer.Ordinal),
            typeof(SectionReader)
                .Assembly.GetTypes()
                .Select(type => type.Namespace ?? "")
                .Where(name => name.StartsWith("Alburnum.Imaging.", StringComparison.Ordinal))
                .Select(name => name["Alburnum.Imaging.".Length..])
                .Distinct(StringComparer.Ordinal)
                .Order(StringComparer.Ordinal)
        );

    [Fact]
    public void No_folder_sees_a_later_one_nor_the_reader_above_them_all()
    {
        for (var k = 0; k < Order.Length; k++)
        {
            string[] later = [.. Order[(k + 1)..].Select(folder => "Alburnum.Imaging." + folder), "Alburnum.Imaging"];
            foreach (var name in later)
            {
                Types()
                    .That()
                    .ResideInNamespace("Alburnum.Imaging." + Order[k])
                    .Should()
                    .NotDependOnAny(Types().That().ResideInNamespace(name))
                    .Check(Room);
            }
        }
    }
}
