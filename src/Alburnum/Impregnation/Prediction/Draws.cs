namespace Alburnum.Impregnation.Prediction;

/// <summary>How many pieces are drawn by chance, and by which seed, where nobody says. Our own choice: enough that a share moves by a per cent or less from seed to seed.</summary>
public static class Draws
{
    /// <summary>Pieces for one prediction.</summary>
    public const int ForAPrediction = 10_000;

    /// <summary>Pieces of each size in a charge, and of a case.</summary>
    public const int ForAPlan = 5_000;

    /// <summary>Pieces for each of many incising patterns tried.</summary>
    public const int ForAPattern = 2_000;

    /// <summary>Seed of the draws.</summary>
    public const int Seed = 1;
}
