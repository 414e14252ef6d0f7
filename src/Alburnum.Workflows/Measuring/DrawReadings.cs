using System.Collections.Concurrent;
using System.Globalization;
using Alburnum.Imaging.Pictures;
using Alburnum.Imaging.Reading;
using Alburnum.Records;

namespace Alburnum.Workflows.Measuring;

/// <summary>Where the pictures of a batch go, and what is said in them.</summary>
/// <param name="Folder">The folder; made where it is missing.</param>
/// <param name="Typeface">A font file's bytes, for the contact sheet.</param>
/// <param name="InOneLine">What came of a section in one line, for the contact sheet; of null, where the photograph could not be read.</param>
/// <param name="Json">All results as JSON, for <c>readings.json</c>.</param>
/// <typeparam name="TResult">What is made of each photograph.</typeparam>
public sealed record DrawingRequest<TResult>(
    string Folder,
    byte[] Typeface,
    Func<SectionReading?, string> InOneLine,
    Func<IReadOnlyList<TResult>, string> Json
);

/// <summary>
/// Measures photographs and draws each reading over its photograph, into one folder with a contact sheet and the readings as JSON. Half a batch is no batch: where it
/// does not come to its end, what was written is taken away again.
/// </summary>
public static class DrawReadings
{
    private const int LongSidePx = 1600;

    /// <summary>The same of a photograph of several pieces, each of which is to be seen as well.</summary>
    private const int LongSideOfPiecesPx = 3200;

    /// <summary>Measures and draws every photograph. One that cannot be read, or whose picture cannot be written, does not stop the rest.</summary>
    /// <param name="request">What is to be measured.</param>
    /// <param name="drawing">Where the pictures go.</param>
    /// <param name="make">Makes the result of a photograph, on any thread.</param>
    /// <param name="progress">Told of each photograph as it is finished; null where nobody looks.</param>
    /// <param name="stop">Stops the work.</param>
    /// <exception cref="InputRefusedException">The folder, the contact sheet or the readings cannot be written.</exception>
    /// <typeparam name="TResult">What is made of each photograph.</typeparam>
    public static async Task<IReadOnlyList<TResult>> RunAsync<TResult>(
        MeasuringRequest request,
        DrawingRequest<TResult> drawing,
        Func<MeasuredPhotograph, TResult> make,
        IProgress<WorkDone>? progress,
        CancellationToken stop
    )
    {
        ArgumentNullException.ThrowIfNull(request);
        ArgumentNullException.ThrowIfNull(drawing);
        OutFolder.Make(drawing.Folder);
        var names = Names(request.Files);
        var written = new ConcurrentBag<string>();
        void Write(string name, byte[] bytes)
        {
            written.Add(Path.Combine(drawing.Folder, name));
            OutFolder.Write(drawing.Folder, name, bytes);
        }
        try
        {
            var drawn = await MeasurePhotographs.EachAsync(
                request,
                (i, photograph) =>
                {
                    var (shown, prints) = Drawn(photograph, drawing, bytes => Write(names[i], bytes));
                    return (Result: make(shown), Prints: prints);
                },
                progress,
                stop
            );
            Write("contact-sheet.jpg", ContactSheet.Jpeg([.. drawn.SelectMany(each => each.Prints)], drawing.Typeface));
            IReadOnlyList<TResult> results = [.. drawn.Select(each => each.Result)];
            await WholeFile.WriteAsync(Path.Combine(drawing.Folder, "readings.json"), drawing.Json(results), stop);
            return results;
        }
        catch
        {
            foreach (var file in written)
                File.Delete(file);
            throw;
        }
    }

    private static (MeasuredPhotograph Shown, IReadOnlyList<ContactPrint> Prints) Drawn<TResult>(
        MeasuredPhotograph photograph,
        DrawingRequest<TResult> drawing,
        Action<byte[]> write
    )
    {
        if (photograph is ReadPhotograph read)
        {
            try
            {
                return (
                    read,
                    read.Readings is [{ Piece: null } alone]
                        ? [One(read, alone, drawing, write)]
                        : Pieces(read, drawing, write)
                );
            }
            catch (InputRefusedException refused)
            {
                photograph = new RefusedPhotograph(read.File, refused.Problems);
            }
        }
        return (photograph, [new(default, Path.GetFileName(photograph.File), drawing.InOneLine(null))]);
    }

    private static ContactPrint One<TResult>(
        ReadPhotograph read,
        SectionReading reading,
        DrawingRequest<TResult> drawing,
        Action<byte[]> write
    )
    {
        write(OverlayPicture.Jpeg(read.File, read.Bytes, reading, LongSidePx));
        var small = OverlayPicture.Jpeg(read.File, read.Bytes, reading, ContactSheet.PrintPx);
        return new(small, reading.Name, drawing.InOneLine(reading));
    }

    // One picture of all, and a print of each.
    private static IReadOnlyList<ContactPrint> Pieces<TResult>(
        ReadPhotograph read,
        DrawingRequest<TResult> drawing,
        Action<byte[]> write
    )
    {
        var all = OverlayPicture.OfPieces(read.File, read.Bytes, read.Readings, LongSideOfPiecesPx, drawing.Typeface);
        write(all);
        return
        [
            .. read.Readings.Select(reading => new ContactPrint(
                OverlayPicture.Alone(all, reading),
                reading.Name,
                drawing.InOneLine(reading)
            )),
        ];
    }

    // Two folders may hold photographs of the same name.
    private static List<string> Names(IReadOnlyList<string> files)
    {
        var taken = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        var names = new List<string>();
        foreach (var file in files)
        {
            var stem = Path.GetFileNameWithoutExtension(file);
            var name = $"{stem}.overlay.jpg";
            for (var n = 2; !taken.Add(name); n++)
                name = string.Create(CultureInfo.InvariantCulture, $"{stem}-{n}.overlay.jpg");
            names.Add(name);
        }
        return names;
    }
}
