using Alburnum.Tests.Shared;

namespace Alburnum.Browser;

/// <summary>The orchard posts, run once for all tests of a class.</summary>
public sealed class OrchardPosts : IAsyncLifetime
{
    private readonly TemporaryFolder _folder = new();
    private ServedCases? _cases;

    internal ServedCases Cases => _cases ?? throw new InvalidOperationException("The cases are not served yet.");

    public async ValueTask InitializeAsync() =>
        _cases = await ServedCases.StartAsync("orchard-posts", _folder, TestContext.Current.CancellationToken);

    public async ValueTask DisposeAsync()
    {
        await Cases.DisposeAsync();
        _folder.Dispose();
    }
}
