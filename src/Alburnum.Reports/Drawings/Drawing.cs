namespace Alburnum.Reports.Drawings;

/// <summary>A drawing as plain marks, in mm with y downwards. What it looks like on a page or in a file is decided by who paints it.</summary>
/// <param name="WidthMm">Width of the sheet, mm.</param>
/// <param name="HeightMm">Height of the sheet, mm.</param>
/// <param name="Title">What the drawing shows, for readers who cannot see it.</param>
/// <param name="Marks">Marks in the order in which they are painted.</param>
public sealed record Drawing(double WidthMm, double HeightMm, string Title, IReadOnlyList<Mark> Marks);

/// <summary>A place on the sheet, mm from its upper left corner.</summary>
/// <param name="X">To the right, mm.</param>
/// <param name="Y">Downwards, mm.</param>
public readonly record struct Spot(double X, double Y);

/// <summary>One thing on a drawing.</summary>
public abstract record Mark;

/// <summary>A filled area.</summary>
/// <param name="Outline">Its corners.</param>
/// <param name="Fill">Colour.</param>
public sealed record Area(IReadOnlyList<Spot> Outline, Ink Fill) : Mark;

/// <summary>A line through some points.</summary>
/// <param name="Points">Two points or more.</param>
/// <param name="Colour">Colour.</param>
/// <param name="WidthMm">Width of the pen, mm.</param>
/// <param name="Dashed">Dashed rather than full.</param>
/// <param name="Closed">The last point is joined to the first.</param>
public sealed record Line(
    IReadOnlyList<Spot> Points,
    Ink Colour,
    double WidthMm,
    bool Dashed = false,
    bool Closed = false
) : Mark;

/// <summary>A short text.</summary>
/// <param name="At">Where its base line starts, or its middle or end.</param>
/// <param name="Text">The text.</param>
/// <param name="SizeMm">Height of the type, mm.</param>
/// <param name="Anchor">What part of the text stands at the place.</param>
/// <param name="Colour">Colour.</param>
public sealed record Label(Spot At, string Text, double SizeMm, Anchor Anchor, Ink Colour) : Mark;

/// <summary>What part of a text stands at its place.</summary>
public enum Anchor
{
    /// <summary>Its start.</summary>
    Start,

    /// <summary>Its middle.</summary>
    Middle,

    /// <summary>Its end.</summary>
    End,
}

/// <summary>The few colours of every sheet; the same on paper and on a screen.</summary>
/// <param name="Hex">Six hexadecimal digits, without a sign before them.</param>
public readonly record struct Ink(string Hex)
{
    /// <summary>The sheet itself.</summary>
    public static Ink Paper { get; } = new("FDFCF8");

    /// <summary>Text and outlines.</summary>
    public static Ink Text { get; } = new("22261F");

    /// <summary>Small print and measures.</summary>
    public static Ink Quiet { get; } = new("5E6459");

    /// <summary>Hair lines and grids.</summary>
    public static Ink Hair { get; } = new("C9C5B6");

    /// <summary>Wood that the preservative has reached.</summary>
    public static Ink Treated { get; } = new("4E7A6B");

    /// <summary>Wood between two readings, itself not read.</summary>
    public static Ink Between { get; } = new("B4C4AE");

    /// <summary>Wood that it has not reached.</summary>
    public static Ink Wood { get; } = new("EFE3C8");

    /// <summary>What is demanded.</summary>
    public static Ink Demand { get; } = new("A33B20");

    /// <summary>Left out of the reading.</summary>
    public static Ink LeftOut { get; } = new("8C8577");
}
