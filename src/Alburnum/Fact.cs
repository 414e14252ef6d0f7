namespace Alburnum;

/// <summary>A value together with where it comes from.</summary>
/// <param name="Value">The value.</param>
/// <param name="Provenance">Its source and standing.</param>
/// <typeparam name="T">Type of the value.</typeparam>
public sealed record Fact<T>(T Value, Provenance Provenance);
