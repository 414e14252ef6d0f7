using System.Text;
using Alburnum.Unpacking;
using SkiaSharp;

namespace Alburnum.Imaging.Photographs;

/// <summary>TIFF (its first page) and HEIC, of any depth and colour space, unpacked by a process of its own that may do nothing else.</summary>
/// <remarks>The decoder of these kinds is large and seldom needed: a file made to do damage ends that process and not this one.</remarks>
internal sealed class ConfinedPicture : PackedPicture
{
    private readonly ConfinedProcess _process;

    private ConfinedPicture(ConfinedProcess process, BinaryReader header)
    {
        _process = process;
        (WidthPx, HeightPx) = (header.ReadInt32(), header.ReadInt32());
        Origin = (SKEncodedOrigin)header.ReadInt32();
    }

    public override int WidthPx { get; }

    public override int HeightPx { get; }

    public override SKEncodedOrigin Origin { get; }

    /// <summary>Reads the header; null where these bytes are of another kind, or their header is broken.</summary>
    /// <exception cref="InvalidOperationException">The program that unpacks cannot be started.</exception>
    public static ConfinedPicture? Open(ReadOnlyMemory<byte> bytes)
    {
        if (KindOf(bytes.Span) is not { } kind)
            return null;
        var process = ConfinedProcess.Start(kind, bytes.Length);
        try
        {
            process.Input.Write(bytes.Span);
            process.Input.Flush();
            if (process.Output.ReadByte() == 1)
            {
                using var header = new BinaryReader(process.Output, Encoding.UTF8, leaveOpen: true);
                return new(process, header);
            }
        }
        // It ended, by its own fault or by its limits.
        catch (IOException) { }
        process.Dispose();
        return null;
    }

    public override UnpackedPicture? Unpack(double leastScale)
    {
        var bitmap = new SKBitmap(new SKImageInfo(WidthPx, HeightPx, SKColorType.Rgba8888, SKAlphaType.Opaque));
        try
        {
            _process.Input.WriteByte(Exchange.Unpack);
            _process.Input.Flush();
            if (_process.Output.ReadByte() == 1)
            {
                var cover = _process.Output.ReadByte() == 1 ? new byte[WidthPx * HeightPx] : null;
                // Rows of four bytes a pixel lie without gaps.
                _process.Output.ReadExactly(bitmap.GetPixelSpan());
                if (cover is not null)
                    _process.Output.ReadExactly(cover);
                return new(bitmap, cover);
            }
        }
        // It ended, by its own fault or by its limits.
        catch (IOException) { }
        bitmap.Dispose();
        return null;
    }

    public override void Dispose() => _process.Dispose();

    // TIFF 6.0, section 2 (and its 64-bit form); ISO 14496-12, file type box, with the brands of ISO 23008-12 for HEVC pictures.
    private static PictureKind? KindOf(ReadOnlySpan<byte> bytes) =>
        bytes switch
        {
            [(byte)'I', (byte)'I', 42 or 43, 0, ..] or [(byte)'M', (byte)'M', 0, 42 or 43, ..] => PictureKind.Tiff,
            [_, _, _, _, (byte)'f', (byte)'t', (byte)'y', (byte)'p', ..]
                when bytes.Length >= 12 && HeicBrands.Contains(Encoding.ASCII.GetString(bytes[8..12])) =>
                PictureKind.Heic,
            _ => null,
        };

    private static readonly HashSet<string> HeicBrands = new(StringComparer.Ordinal)
    {
        "heic",
        "heix",
        "heim",
        "heis",
        "hevc",
        "hevx",
        "mif1",
        "msf1",
    };
}
