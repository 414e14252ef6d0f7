namespace Alburnum.Workflows;

/// <summary>Passes the share done of one long run on as the progress of a workflow.</summary>
internal sealed class ShareDone : IProgress<double>
{
    private readonly IProgress<WorkDone> _progress;

    private ShareDone(IProgress<WorkDone> progress) => _progress = progress;

    /// <summary>Null where nobody looks.</summary>
    public static ShareDone? To(IProgress<WorkDone>? progress) => progress is null ? null : new(progress);

    /// <inheritdoc/>
    public void Report(double value) => _progress.Report(new(value));
}
