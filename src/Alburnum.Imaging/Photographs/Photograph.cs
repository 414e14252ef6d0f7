using Alburnum.Imaging.Geometry;
using SkiaSharp;

namespace Alburnum.Imaging.Photographs;

/// <summary>A decoded photograph as it lies in the file, with the turn that stands it upright. Four bytes a pixel: red, green, blue, unused.</summary>
/// <remarks>Pixels are not moved to turn the picture; <see cref="UprightToStored"/> is folded into whatever reads them.</remarks>
internal sealed class Photograph : IDisposable
{
    private readonly SKBitmap _bitmap;
    private readonly byte[]? _cover;

    /// <summary>Takes over a bitmap of 8888 layout.</summary>
    /// <param name="unpacked">The pixels as stored.</param>
    /// <param name="origin">How the stored picture is to be turned.</param>
    /// <param name="widthPx">Width upright at full size.</param>
    /// <param name="heightPx">Height upright at full size.</param>
    public Photograph(UnpackedPicture unpacked, SKEncodedOrigin origin, int widthPx, int heightPx)
    {
        (_bitmap, _cover) = (unpacked.Bitmap, unpacked.Cover);
        Origin = origin;
        WidthPx = widthPx;
        HeightPx = heightPx;
        var turned = origin >= SKEncodedOrigin.LeftTop;
        StoredPerUpright = (turned ? _bitmap.Height : _bitmap.Width) / (double)widthPx;
    }

    public SKEncodedOrigin Origin { get; }

    /// <summary>Width upright at full size.</summary>
    public int WidthPx { get; }

    /// <summary>Height upright at full size.</summary>
    public int HeightPx { get; }

    public int StoredWidthPx => _bitmap.Width;

    public int StoredHeightPx => _bitmap.Height;

    public int StoredStride => _bitmap.RowBytes;

    /// <summary>Stored pixels per full-size pixel: 1, or less where a reduced picture was decoded.</summary>
    public double StoredPerUpright { get; }

    public ReadOnlySpan<byte> Pixels => _bitmap.GetPixelSpan();

    public SKBitmap Bitmap => _bitmap;

    /// <summary>Affine map from upright full-size pixels to stored pixels.</summary>
    public Homography UprightToStored
    {
        get
        {
            var turned = Origin >= SKEncodedOrigin.LeftTop;
            var sx = (turned ? _bitmap.Height : _bitmap.Width) / (double)WidthPx;
            var sy = (turned ? _bitmap.Width : _bitmap.Height) / (double)HeightPx;
            double w = _bitmap.Width;
            double h = _bitmap.Height;
            return Origin switch
            {
                SKEncodedOrigin.TopRight => new(-sx, 0, w, 0, sy, 0, 0, 0, 1),
                SKEncodedOrigin.BottomRight => new(-sx, 0, w, 0, -sy, h, 0, 0, 1),
                SKEncodedOrigin.BottomLeft => new(sx, 0, 0, 0, -sy, h, 0, 0, 1),
                SKEncodedOrigin.LeftTop => new(0, sy, 0, sx, 0, 0, 0, 0, 1),
                SKEncodedOrigin.RightTop => new(0, sy, 0, -sx, 0, h, 0, 0, 1),
                SKEncodedOrigin.RightBottom => new(0, -sy, w, -sx, 0, h, 0, 0, 1),
                SKEncodedOrigin.LeftBottom => new(0, -sy, w, sx, 0, 0, 0, 0, 1),
                _ => new(sx, 0, 0, 0, sy, 0, 0, 0, 1),
            };
        }
    }

    /// <summary>Whether any pixel is see-through.</summary>
    public bool HasSeeThrough => _cover is not null;

    /// <summary>How far the picture covers what is behind it, 0 to 255, at a place in upright full-size pixels.</summary>
    public byte CoverAt(PointPx upright)
    {
        if (_cover is null)
            return byte.MaxValue;
        var stored = UprightToStored.Map(upright);
        var x = Math.Clamp((int)stored.X, 0, _bitmap.Width - 1);
        var y = Math.Clamp((int)stored.Y, 0, _bitmap.Height - 1);
        return _cover[(y * _bitmap.Width) + x];
    }

    /// <summary>A part of this photograph as one of its own; it shares the pixels, and must go before this one does.</summary>
    /// <param name="left">First column, upright full-size pixels, as the others.</param>
    /// <param name="top">First row.</param>
    /// <param name="right">Past the last column.</param>
    /// <param name="bottom">Past the last row.</param>
    /// <remarks>Where a reduced picture was decoded, its places are good to a stored pixel.</remarks>
    public Photograph Cutting(int left, int top, int right, int bottom)
    {
        var map = UprightToStored;
        var (a, b) = (map.Map(new(left, top)), map.Map(new(right, bottom)));
        var stored = SKRectI.Intersect(
            new SKRectI(0, 0, _bitmap.Width, _bitmap.Height),
            new SKRectI(
                (int)Math.Round(Math.Min(a.X, b.X)),
                (int)Math.Round(Math.Min(a.Y, b.Y)),
                (int)Math.Round(Math.Max(a.X, b.X)),
                (int)Math.Round(Math.Max(a.Y, b.Y))
            )
        );
        var part = new SKBitmap();
        if (!_bitmap.ExtractSubset(part, stored))
            throw new InvalidOperationException($"Nothing of the photograph lies in {left}, {top}, {right}, {bottom}.");
        return new(new(part, null), Origin, right - left, bottom - top);
    }

    public void Dispose() => _bitmap.Dispose();
}
