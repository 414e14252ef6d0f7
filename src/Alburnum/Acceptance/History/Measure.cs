namespace Alburnum.Acceptance.History;

/// <summary>A measure of a charge: how it is called and in which unit it is given.</summary>
/// <param name="Name">Name in words, for instance "mean depth".</param>
/// <param name="Unit">Unit, for instance "mm".</param>
public sealed record Measure(string Name, string Unit);
