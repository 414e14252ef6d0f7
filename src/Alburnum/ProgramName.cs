using System.Reflection;

namespace Alburnum;

/// <summary>What the program calls itself in what it writes.</summary>
public static class ProgramName
{
    /// <summary>Name and version, for instance "Alburnum 0.1.0".</summary>
    public static string WithVersion { get; } =
        $"Alburnum {Assembly.GetExecutingAssembly().GetName().Version!.ToString(3)}";
}
