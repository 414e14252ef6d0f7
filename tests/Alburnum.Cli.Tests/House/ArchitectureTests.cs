using System.Reflection;
using ArchUnitNET.Domain;
using ArchUnitNET.Loader;
using ArchUnitNET.xUnitV3;
using static ArchUnitNET.Fluent.ArchRuleDefinition;
using static ArchUnitNET.Fluent.Slices.SliceRuleDefinition;
using Assembly = System.Reflection.Assembly;

namespace Alburnum.Cli.Tests.House;

/// <summary>The layout of docs/decisions/0018: one-way arrows between projects, no circle of folders within one, thin ends.</summary>
public sealed class ArchitectureTests
{
    private static readonly Architecture Layout = new ArchLoader().LoadAssemblies([.. Rooms.All]).Build();

    public static TheoryData<string> Names => [.. Rooms.All.Select(Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void A_room_sees_no_other_than_those_before_it(string name)
    {
        var room = Room(name);
        foreach (var hidden in Rooms.All.Except([room, .. Rooms.Sees[room]]))
        {
            Types()
                .That()
                .ResideInAssembly(room)
                .Should()
                .NotDependOnAny(Types().That().ResideInAssembly(hidden))
                .Check(Layout);
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void No_folder_of_a_room_depends_on_another_in_a_circle(string name) =>
        Slices()
            .Matching($"{Name(Room(name)).Replace("alburnum-cli", "Alburnum.Cli", StringComparison.Ordinal)}.(**)")
            .Should()
            .BeFreeOfCycles()
            .Check(new ArchLoader().LoadAssemblies(Room(name)).Build());

    [Fact]
    public void The_case_store_sees_neither_case_folders_nor_photographs_being_read() =>
        Types()
            .That()
            .ResideInNamespaceMatching("^Alburnum.Records.Store")
            .Should()
            .NotDependOnAny(
                Types().That().ResideInAssembly(Rooms.Imaging).Or().ResideInNamespace("Alburnum.Records.CaseFolders")
            )
            .Check(Layout);

    [Fact]
    public void The_core_refers_to_nothing_but_the_runtime_and_the_numerics_library() =>
        Assert.All(
            Rooms.Core.GetReferencedAssemblies(),
            reference =>
                Assert.True(
                    reference.Name!.StartsWith("System", StringComparison.Ordinal)
                        || reference.Name == "MathNet.Numerics",
                    reference.Name
                )
        );

    [Fact]
    public void Records_of_the_core_cannot_be_changed() =>
        Assert.All(
            Rooms
                .Core.GetExportedTypes()
                .Where(type => type.GetMethod("<Clone>$") is not null)
                .SelectMany(type => type.GetProperties(BindingFlags.Public | BindingFlags.Instance))
                .Where(property => property.SetMethod is { IsPublic: true }),
            property =>
                Assert.Contains(
                    typeof(System.Runtime.CompilerServices.IsExternalInit),
                    property.SetMethod!.ReturnParameter.GetRequiredCustomModifiers()
                )
        );

    /// <summary>The ends parse, call a workflow and show. What computes is a function of a static class in the core, the solver or the reader of photographs.</summary>
    [Fact]
    public void The_command_line_and_the_page_do_no_arithmetic_of_the_core()
    {
        System.Type[] functions =
        [
            .. new[] { Rooms.Core, Rooms.Flow, Rooms.Imaging }
                .SelectMany(room => room.GetTypes())
                .Where(type => type is { IsAbstract: true, IsSealed: true, IsNested: false } && Computes(type)),
        ];
        Types()
            .That()
            .ResideInAssembly(Rooms.Cli, Rooms.Web)
            .Should()
            .NotDependOnAny(Types().That().Are(functions))
            .Check(Layout);
    }

    [Fact]
    public void No_type_bears_a_name_that_says_nothing() =>
        Assert.DoesNotContain(
            Rooms
                .All.SelectMany(assembly => assembly.GetTypes())
                // Source generators bring names of their own.
                .Where(type => type.Namespace?.StartsWith("Alburnum", StringComparison.Ordinal) == true),
            type =>
                new[] { "Helper", "Util", "Utils", "Utilities", "Manager", "Misc" }.Any(word =>
                    type.Name.EndsWith(word, StringComparison.Ordinal)
                )
        );

    [Fact]
    public void No_two_public_types_share_a_name() =>
        Assert.Empty(
            Rooms
                .Libraries.SelectMany(assembly => assembly.GetExportedTypes())
                .Where(type => !type.IsNested)
                .GroupBy(type => type.Name, StringComparer.Ordinal)
                .Where(same => same.Count() > 1)
                .Select(same => same.Key)
        );

    // Names, texts and fields with their ranges are read and written at the ends; so are pictures for the eye.
    private static bool Computes(System.Type type) =>
        !type.Name.EndsWith("Words", StringComparison.Ordinal)
        && !type.Name.EndsWith("Text", StringComparison.Ordinal)
        && type.Namespace?.StartsWith("Alburnum.", StringComparison.Ordinal) == true
        && type.Namespace is not ("Alburnum.Facts" or "Alburnum.Imaging.Pictures");

    private static string Name(Assembly assembly) => assembly.GetName().Name!;

    private static Assembly Room(string name) => Rooms.All.Single(assembly => Name(assembly) == name);
}
