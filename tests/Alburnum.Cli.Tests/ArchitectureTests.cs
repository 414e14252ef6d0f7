using System.Reflection;
using ArchUnitNET.Loader;
using ArchUnitNET.xUnitV3;
using static ArchUnitNET.Fluent.ArchRuleDefinition;

namespace Alburnum.Cli.Tests;

/// <summary>
/// The one-way arrows of the layout: Cli and Web see everything before them; Reports sees the workflows whose results it shows; Workflows sees Records and Imaging; those see
/// the core; the core sees none of them.
/// </summary>
public sealed class ArchitectureTests
{
    private static readonly Assembly Core = typeof(Require).Assembly;
    private static readonly Assembly Imaging = typeof(Alburnum.Imaging.SectionReader).Assembly;
    private static readonly Assembly Records = typeof(Alburnum.Records.Store.CaseStore).Assembly;
    private static readonly Assembly Workflows = typeof(Alburnum.Workflows.WorkDone).Assembly;
    private static readonly Assembly Reports = typeof(Alburnum.Reports.Documents.CaseDocument).Assembly;
    private static readonly Assembly Web = typeof(Alburnum.Web.WebServer).Assembly;
    private static readonly Assembly Cli = typeof(CommandLine).Assembly;

    private static readonly ArchUnitNET.Domain.Architecture Layout = new ArchLoader()
        .LoadAssemblies(Core, Imaging, Records, Workflows, Reports, Web, Cli)
        .Build();

    public static TheoryData<string, string[]> Arrows =>
        new()
        {
            { Name(Core), [Name(Imaging), Name(Records), Name(Workflows), Name(Reports), Name(Web), Name(Cli)] },
            { Name(Imaging), [Name(Records), Name(Workflows), Name(Reports), Name(Web), Name(Cli)] },
            { Name(Records), [Name(Workflows), Name(Reports), Name(Web), Name(Cli)] },
            { Name(Workflows), [Name(Reports), Name(Web), Name(Cli)] },
            { Name(Reports), [Name(Web), Name(Cli)] },
            { Name(Web), [Name(Cli)] },
        };

    [Theory]
    [MemberData(nameof(Arrows))]
    public void A_room_never_looks_back(string room, string[] roomsBehindIt)
    {
        foreach (var behind in roomsBehindIt)
        {
            Types()
                .That()
                .ResideInAssembly(All(room))
                .Should()
                .NotDependOnAny(Types().That().ResideInAssembly(All(behind)))
                .Check(Layout);
        }
    }

    [Fact]
    public void The_case_store_sees_neither_case_folders_nor_photographs_being_read() =>
        Types()
            .That()
            .ResideInNamespaceMatching("^Alburnum.Records.Store")
            .Should()
            .NotDependOnAny(
                Types().That().ResideInAssembly(Imaging).Or().ResideInNamespace("Alburnum.Records.CaseFolders")
            )
            .Check(Layout);

    [Fact]
    public void The_core_refers_to_nothing_but_the_runtime_and_the_numerics_library() =>
        Assert.All(
            Core.GetReferencedAssemblies(),
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
            Core.GetExportedTypes()
                .Where(type => type.GetMethod("<Clone>$") is not null)
                .SelectMany(type => type.GetProperties(BindingFlags.Public | BindingFlags.Instance))
                .Where(property => property.SetMethod is { IsPublic: true }),
            property =>
                Assert.Contains(
                    typeof(System.Runtime.CompilerServices.IsExternalInit),
                    property.SetMethod!.ReturnParameter.GetRequiredCustomModifiers()
                )
        );

    [Fact]
    public void No_type_bears_a_name_that_says_nothing() =>
        Assert.DoesNotContain(
            new[] { Core, Imaging, Records, Workflows, Reports, Web, Cli }
                .SelectMany(assembly => assembly.GetTypes())
                // Source generators bring names of their own.
                .Where(type => type.Namespace?.StartsWith("Alburnum", StringComparison.Ordinal) == true),
            type =>
                new[] { "Helper", "Util", "Utils", "Utilities", "Manager", "Misc" }.Any(word =>
                    type.Name.EndsWith(word, StringComparison.Ordinal)
                )
        );

    private static string Name(Assembly assembly) => assembly.GetName().Name!;

    private static Assembly All(string name) =>
        new[] { Core, Imaging, Records, Workflows, Reports, Web, Cli }.Single(assembly => Name(assembly) == name);
}
