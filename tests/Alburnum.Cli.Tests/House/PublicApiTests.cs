using Alburnum.Tests.Shared;
using PublicApiGenerator;

namespace Alburnum.Cli.Tests.House;

/// <summary>What each library shows to the others, held as text: a public member is a promise, so a new one is seen in review. Written anew with ALBURNUM_WRITE_APPROVED=1.</summary>
public sealed class PublicApiTests
{
    public static TheoryData<string> Libraries => [.. Rooms.Libraries.Select(library => library.GetName().Name!)];

    [Theory]
    [MemberData(nameof(Libraries))]
    public void A_library_shows_what_was_approved(string name)
    {
        var shown = Rooms
            .Libraries.Single(library => library.GetName().Name == name)
            .GeneratePublicApi(new ApiGeneratorOptions { IncludeAssemblyAttributes = false });
        var approved = Repository.At("tests", "Alburnum.Cli.Tests", "House", "api", name + ".txt");
        if (Environment.GetEnvironmentVariable("ALBURNUM_WRITE_APPROVED") == "1")
            File.WriteAllText(approved, shown.ReplaceLineEndings("\n"));

        Assert.Equal(File.ReadAllText(approved), shown.ReplaceLineEndings("\n"));
    }
}
