using Alburnum.Workflows.Impregnation;

namespace Alburnum.Reports.Words;

/// <summary>What is said of a sweep over two inputs, in words.</summary>
/// <param name="wording">The language.</param>
public sealed class SweepWords(Wording wording)
{
    /// <summary>In the language chosen.</summary>
    public static SweepWords Current => new(Wording.Current);

    /// <summary>Which files hold the measure.</summary>
    public string Files(string files, string measure) =>
        wording.Say("sweep.files", ("files", files), ("measure", measure));

    /// <summary>Said where some boxes of the map have no number.</summary>
    public string Impossible => wording.Say("sweep.impossible");

    /// <summary>What is mapped, with its unit.</summary>
    public string Say(SweepMeasure measure) =>
        measure switch
        {
            SweepMeasure.Pieces => wording.Say("sweep.pieces"),
            SweepMeasure.Cores => wording.Say("sweep.cores"),
            SweepMeasure.MeanDepth => wording.Say("sweep.mean-depth"),
            SweepMeasure.LeastDepth => wording.Say("sweep.least-depth"),
            SweepMeasure.Uptake => wording.Say("sweep.uptake"),
            SweepMeasure.Zone => wording.Say("sweep.zone"),
            _ => throw new ArgumentOutOfRangeException(nameof(measure), measure, "Not a measure."),
        };

    /// <summary>How far a sweep came before it was stopped.</summary>
    /// <param name="done">Points done.</param>
    /// <param name="points">Points in all.</param>
    public string Stopped(int done, int points) =>
        wording.Say("sweep.stopped", ("done", Figures.Whole(done)), ("points", Figures.Whole(points)));
}
