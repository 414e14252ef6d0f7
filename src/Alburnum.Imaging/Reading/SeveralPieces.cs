using System.Globalization;
using Alburnum.Imaging.Geometry;

namespace Alburnum.Imaging.Reading;

/// <summary>Several pieces of one section on one photograph.</summary>
/// <param name="Count">How many there are. 2 to 60.</param>
/// <param name="Labels">What each is called, in reading order, as many as there are pieces; null: they go by their numbers.</param>
public sealed record SeveralPieces(int Count, IReadOnlyList<string>? Labels);

/// <summary>One of several pieces on a photograph.</summary>
/// <param name="Number">Its place in reading order, left to right and row by row, from 1.</param>
/// <param name="Label">What it is called; null: it goes by its number.</param>
/// <param name="MiddlePx">About where it lies.</param>
public sealed record PieceOnPhotograph(int Number, string? Label, PointPx MiddlePx)
{
    /// <summary>Its label, or its number as "#3".</summary>
    public string Name => Label ?? string.Create(CultureInfo.InvariantCulture, $"#{Number}");
}
