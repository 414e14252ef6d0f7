namespace Alburnum.Workflows;

/// <summary>
/// How far a workflow has come. A workflow is one plain function for one thing that people do: it takes a typed request, the facts it needs, a place to report progress
/// (null where nobody looks) and a token that stops it, and gives a typed result. It prints nothing and parses nothing; the command line, the page and the API call the same one.
/// </summary>
/// <param name="Share">Share of the work that is done, 0 to 1.</param>
/// <param name="Item">The item finished last, where the work goes item by item; otherwise null.</param>
public readonly record struct WorkDone(double Share, FinishedItem? Item = null);

/// <summary>One item of several is finished.</summary>
/// <param name="Number">How many are finished, from 1.</param>
/// <param name="Of">How many there are.</param>
/// <param name="Name">The item's own name, such as a file's.</param>
public sealed record FinishedItem(int Number, int Of, string Name);
