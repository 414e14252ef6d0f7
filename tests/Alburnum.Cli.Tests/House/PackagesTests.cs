using System.Text.RegularExpressions;
using Alburnum.Tests.Shared;

namespace Alburnum.Cli.Tests.House;

/// <summary>Every package has its reason in the decisions.</summary>
public sealed class PackagesTests
{
    [Fact]
    public void Every_package_that_is_used_is_decided_on()
    {
        var decided = File.ReadAllText(Repository.At("docs", "decisions", "0005-packages.md"));
        var used = Regex
            .Matches(
                File.ReadAllText(Repository.At("Directory.Packages.props")),
                "PackageVersion Include=\"(?<name>[^\"]+)\"",
                RegexOptions.ExplicitCapture,
                TimeSpan.FromSeconds(1)
            )
            .Select(match => match.Groups["name"].Value)
            .ToList();

        Assert.True(used.Count > 20);
        Assert.DoesNotContain(used, name => !Ways(name).Any(way => decided.Contains(way, StringComparison.Ordinal)));
    }

    // A family of packages is decided on once, under the name that it has in speech.
    private static IEnumerable<string> Ways(string name) =>
        [
            name,
            name.Split('.')[0] is "SkiaSharp" or "OpenCvSharp4" ? name.Split('.')[0] : name,
            name.StartsWith("Magick.NET", StringComparison.Ordinal) ? "Magick.NET" : name,
            name.Replace("Microsoft.EntityFrameworkCore.Sqlite", "Entity Framework Core with SQLite"),
            name.Replace("Microsoft.EntityFrameworkCore.Design", "Entity Framework Core Design"),
            name.Replace("Microsoft.CodeAnalysis.BannedApiAnalyzers", "BannedApiAnalyzers"),
            name.Replace("Microsoft.Playwright", "Playwright with axe"),
            name.Replace("Deque.AxeCore.Playwright", "Playwright with axe"),
            name.Replace("TngTech.ArchUnitNET.xUnitV3", "ArchUnitNET"),
        ];
}
