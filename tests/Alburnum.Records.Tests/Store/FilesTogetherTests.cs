using System.Text;
using Alburnum.Records.Store;
using Alburnum.Tests.Shared;

namespace Alburnum.Records.Tests.Store;

public sealed class FilesTogetherTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task What_was_there_before_stands_again_when_they_are_taken_back()
    {
        _folder.Write("report.json", "before");
        using (var files = await PlacedAsync())
            files.TakeBack();

        Assert.Equal("before", File.ReadAllText(_folder.At("report.json")));
        Assert.Single(Directory.GetFiles(_folder.Path));
    }

    [Fact]
    public async Task What_could_not_be_put_back_is_not_thrown_away()
    {
        _folder.Write("report.json", "before");
        using (var files = await PlacedAsync())
        {
            // Something else took the name meanwhile.
            File.Delete(_folder.At("report.json"));
            Directory.CreateDirectory(_folder.At("report.json"));
            Assert.ThrowsAny<Exception>(files.TakeBack);
        }

        Assert.Equal("before", File.ReadAllText(Assert.Single(Directory.GetFiles(_folder.Path))));
    }

    private async Task<FilesTogether> PlacedAsync()
    {
        var files = new FilesTogether(_folder.Path, [("report.json", Encoding.UTF8.GetBytes("after"))]);
        await files.PrepareAsync(TestContext.Current.CancellationToken);
        files.Place();
        return files;
    }
}
