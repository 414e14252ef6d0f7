using Alburnum.Records.Facts;
using Alburnum.Tests.Shared;
using Alburnum.Timber;
using Alburnum.Workflows.Measuring;

namespace Alburnum.Workflows.Tests.Measuring;

public sealed class DrawReadingsTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    private static string Post => Repository.At("examples", "barn-purlins", "P01.jpg");

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task A_batch_stopped_halfway_leaves_nothing_behind()
    {
        using var stop = new CancellationTokenSource();

        await Assert.ThrowsAnyAsync<OperationCanceledException>(() =>
            RunAsync([Post, .. Enumerable.Repeat(Post, 5)], _ => "{}", new Told(stop.Cancel), stop.Token)
        );

        Assert.Empty(Directory.EnumerateFiles(_folder.Path));
    }

    [Fact]
    public async Task A_batch_whose_readings_cannot_be_written_leaves_nothing_behind()
    {
        Directory.CreateDirectory(_folder.At("readings.json"));

        await Assert.ThrowsAsync<InputRefusedException>(() =>
            RunAsync([Post], _ => "{}", progress: null, TestContext.Current.CancellationToken)
        );

        Assert.Empty(Directory.EnumerateFiles(_folder.Path));
    }

    [Fact]
    public async Task Two_photographs_of_one_name_get_a_picture_each_and_what_cannot_be_read_none()
    {
        var results = await RunAsync(
            [Post, Post, _folder.At("nowhere.jpg")],
            all => string.Join(' ', all),
            progress: null,
            TestContext.Current.CancellationToken
        );

        Assert.Equal(["read", "read", "refused"], results);
        Assert.Equal(
            ["P01-2.overlay.jpg", "P01.overlay.jpg", "contact-sheet.jpg", "readings.json"],
            Directory.EnumerateFiles(_folder.Path).Select(Path.GetFileName).Order(StringComparer.Ordinal)
        );
        Assert.Equal(
            "read read refused",
            await File.ReadAllTextAsync(_folder.At("readings.json"), TestContext.Current.CancellationToken)
        );
    }

    private Task<IReadOnlyList<string>> RunAsync(
        IReadOnlyList<string> files,
        Func<IReadOnlyList<string>, string> json,
        IProgress<WorkDone>? progress,
        CancellationToken stop
    ) =>
        DrawReadings.RunAsync(
            new(
                files,
                new()
                {
                    Section = new RoundSection(120),
                    Candidates = new FactLibrary(Repository.At("data")).Indicators,
                },
                new(),
                field => field
            ),
            new DrawingRequest<string>(
                _folder.Path,
                File.ReadAllBytes(Repository.At("src", "Alburnum.Reports", "Fonts", "Lato-Regular.ttf")),
                _ => "a line",
                json
            ),
            photograph => photograph is ReadPhotograph ? "read" : "refused",
            progress,
            stop
        );

    private sealed class Told(Action act) : IProgress<WorkDone>
    {
        public void Report(WorkDone value) => act();
    }
}
