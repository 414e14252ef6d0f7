namespace Alburnum.Impregnation.Prediction;

/// <summary>
/// How many pieces are drawn by chance, and by which seed, where nobody says: the same wherever a treatment is predicted, so that one question has one answer. Our own
/// choice: enough that a share moves by a per cent or less from seed to seed.
/// </summary>
public static class Draws
{
    /// <summary>Pieces of each size, and for each pattern of incising.</summary>
    public const int Pieces = 10_000;

    /// <summary>Seed of the draws.</summary>
    public const int Seed = 1;
}
