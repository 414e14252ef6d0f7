using System.Reflection;

namespace Alburnum.Cli.Tests.House;

/// <summary>The product's assemblies, in the order of the arrows: each may see those before it.</summary>
internal static class Rooms
{
    public static Assembly Core { get; } = typeof(Require).Assembly;
    public static Assembly Flow { get; } = typeof(Alburnum.Flow.Stepping.FlowSolver).Assembly;
    public static Assembly Unpacking { get; } = typeof(Alburnum.Unpacking.Exchange).Assembly;
    public static Assembly Imaging { get; } = typeof(Alburnum.Imaging.SectionReader).Assembly;
    public static Assembly Records { get; } = typeof(Alburnum.Records.Facts.FactLibrary).Assembly;
    public static Assembly Workflows { get; } = typeof(Alburnum.Workflows.WorkDone).Assembly;
    public static Assembly Reports { get; } = typeof(Alburnum.Reports.Documents.CaseDocument).Assembly;
    public static Assembly Web { get; } = typeof(Alburnum.Web.WebServer).Assembly;
    public static Assembly Cli { get; } = typeof(CommandLine).Assembly;

    /// <summary>What others build on.</summary>
    public static IReadOnlyList<Assembly> Libraries { get; } =
    [Core, Flow, Unpacking, Imaging, Records, Workflows, Reports];

    /// <summary>Everything.</summary>
    public static IReadOnlyList<Assembly> All { get; } = [.. Libraries, Web, Cli];

    /// <summary>Which rooms each room sees.</summary>
    public static IReadOnlyDictionary<Assembly, IReadOnlyList<Assembly>> Sees { get; } =
        new Dictionary<Assembly, IReadOnlyList<Assembly>>
        {
            [Core] = [],
            [Flow] = [Core],
            [Unpacking] = [],
            [Imaging] = [Core, Unpacking],
            [Records] = [Core],
            [Workflows] = [Core, Flow, Imaging, Records],
            [Reports] = [Core, Flow, Imaging, Records, Workflows],
            [Web] = [Core, Imaging, Records, Workflows, Reports],
            [Cli] = All,
        };
}
