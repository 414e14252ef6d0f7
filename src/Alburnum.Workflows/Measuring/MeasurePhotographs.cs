using Alburnum.Imaging;
using Alburnum.Imaging.Reading;
using Alburnum.Records.Marks;

namespace Alburnum.Workflows.Measuring;

/// <summary>What is to be measured on some photographs.</summary>
/// <param name="Files">The photographs, in the order of the results.</param>
/// <param name="Reading">What is known of every section; its own marks are not looked at.</param>
/// <param name="Marks">What is pointed out on every photograph.</param>
/// <param name="NameOf">What a field of marks is called where it was read, for messages.</param>
public sealed record MeasuringRequest(
    IReadOnlyList<string> Files,
    ReadingRequest Reading,
    WrittenMarks Marks,
    Func<string, string> NameOf
)
{
    /// <summary>How many pieces each photograph shows; null: one.</summary>
    public SeveralPieces? Pieces { get; init; }
}

/// <summary>What came of one photograph.</summary>
/// <param name="File">The photograph.</param>
public abstract record MeasuredPhotograph(string File);

/// <summary>It was read.</summary>
/// <param name="File">The photograph.</param>
/// <param name="Bytes">The file's bytes.</param>
/// <param name="Readings">What was read: of one section, or of each of several in reading order.</param>
public sealed record ReadPhotograph(string File, ReadOnlyMemory<byte> Bytes, IReadOnlyList<SectionReading> Readings)
    : MeasuredPhotograph(File);

/// <summary>It cannot be read, or a mark cannot be right.</summary>
/// <param name="File">The photograph.</param>
/// <param name="Problems">What is wrong.</param>
public sealed record RefusedPhotograph(string File, IReadOnlyList<InputProblem> Problems) : MeasuredPhotograph(File);

/// <summary>Measures depth of penetration on photographs of sprayed cross-sections, side by side.</summary>
public static class MeasurePhotographs
{
    /// <summary>Measures every photograph. One that cannot be read does not stop the rest.</summary>
    /// <param name="request">What is to be measured.</param>
    /// <param name="make">
    /// Makes the result of a photograph, given with its place in the list, while its bytes are at hand, on any thread: of many photographs only a few are held at a time.
    /// </param>
    /// <param name="progress">Told of each photograph as it is finished; null where nobody looks.</param>
    /// <param name="stop">Stops the work.</param>
    public static Task<IReadOnlyList<TResult>> EachAsync<TResult>(
        MeasuringRequest request,
        Func<int, MeasuredPhotograph, TResult> make,
        IProgress<WorkDone>? progress,
        CancellationToken stop
    )
    {
        ArgumentNullException.ThrowIfNull(request);
        ArgumentNullException.ThrowIfNull(make);
        return EachItem.DoAsync(
            [.. request.Files.Index()],
            file => file.Item,
            file => make(file.Index, Measure(file.Item, request, stop)),
            progress,
            stop
        );
    }

    private static MeasuredPhotograph Measure(string file, MeasuringRequest request, CancellationToken stop)
    {
        try
        {
            var bytes = PhotographPaths.Read(file);
            if (request.Pieces is { } pieces)
                return new ReadPhotograph(
                    file,
                    bytes,
                    SectionReader.ReadEach(
                        file,
                        bytes,
                        pieces,
                        MarksOnPhotograph.Of(request.Marks).On(request.Reading),
                        stop
                    )
                );
            var reading = SectionReader.Read(
                file,
                bytes,
                MarksOnPhotograph.Of(request.Marks).On(request.Reading),
                stop
            );
            var beside = MarksOnPhotograph.Beside(request.Marks, reading);
            return beside.Count == 0
                ? new ReadPhotograph(file, bytes, [reading])
                : new RefusedPhotograph(file, [.. beside.Select(fault => fault.At(file, request.NameOf))]);
        }
        catch (InputRefusedException refused)
        {
            return new RefusedPhotograph(file, refused.Problems);
        }
    }
}
