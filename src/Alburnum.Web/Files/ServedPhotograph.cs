using Alburnum.Imaging.Pictures;
using Alburnum.Records.Store;
using Alburnum.Web.Guarding;
using Microsoft.AspNetCore.Http;

namespace Alburnum.Web.Files;

/// <summary>Photographs, by the SHA-256 of their bytes.</summary>
internal static class ServedPhotograph
{
    private const int LongSidePx = 2400;

    /// <summary>First bytes that tell the kind of a picture.</summary>
    private const int TellingBytes = 12;

    public static string UprightAddress(string sha256) => $"/photographs/{sha256}/upright";

    /// <summary>As it arrived, sent as it is read. TIFF and HEIC are shown by no browser: their address leads to the upright copy.</summary>
    public static async Task<IResult> AsKeptAsync(
        string sha256,
        ICaseStore store,
        HttpContext http,
        CancellationToken stop
    )
    {
        if (await store.OpenPhotographAsync(sha256, stop) is not { } photograph)
            return Results.NotFound();
        var start = new byte[TellingBytes];
        var read = await photograph.Bytes.ReadAtLeastAsync(start, TellingBytes, throwOnEndOfStream: false, stop);
        if (KindOf(start.AsSpan(0, read)) is not var (mediaType, ending))
        {
            await photograph.DisposeAsync();
            return Results.Redirect(UprightAddress(sha256));
        }
        photograph.Bytes.Position = 0;
        // Named by its own content, so it never changes.
        http.Response.Headers.CacheControl = AnswerHeaders.KeptByTheReader;
        AnswerHeaders.Name(http.Response, isShown: true, sha256 + ending);
        return Results.Stream(photograph.Bytes, mediaType);
    }

    /// <summary>As a person sees it, however the camera was held: what is clicked on and what is typed count in the same pixels.</summary>
    public static async Task<IResult> UprightAsync(
        string sha256,
        ICaseStore store,
        ReadyCopies copies,
        HttpContext http,
        CancellationToken stop
    )
    {
        // Checked each time, so that nothing is shown of a photograph that was deleted or damaged meanwhile.
        await using var photograph = await store.OpenPhotographAsync(sha256, stop);
        if (photograph is null)
            return Results.NotFound();
        var jpeg = await copies.OfAsync(
            $"upright {sha256}",
            async () =>
            {
                var bytes = new byte[photograph.Bytes.Length];
                await photograph.Bytes.ReadExactlyAsync(bytes, CancellationToken.None);
                return Thumbnail.Jpeg(photograph.FileName, bytes, LongSidePx);
            }
        );
        http.Response.Headers.CacheControl = AnswerHeaders.KeptByTheReader;
        AnswerHeaders.Name(http.Response, isShown: true, $"{sha256}-upright.jpg");
        return Results.Stream(new MemoryStream(jpeg, writable: false), "image/jpeg");
    }

    /// <summary>The kind of picture, read from its first bytes; what a file is called proves nothing. Null for one that browsers do not show.</summary>
    internal static (string MediaType, string Ending)? KindOf(ReadOnlySpan<byte> start) =>
        start switch
        {
            [0xFF, 0xD8, 0xFF, ..] => ("image/jpeg", ".jpg"),
            [0x89, (byte)'P', (byte)'N', (byte)'G', 0x0D, 0x0A, 0x1A, 0x0A, ..] => ("image/png", ".png"),
            [(byte)'R', (byte)'I', (byte)'F', (byte)'F', _, _, _, _, (byte)'W', (byte)'E', (byte)'B', (byte)'P', ..] =>
                ("image/webp", ".webp"),
            _ => null,
        };
}
