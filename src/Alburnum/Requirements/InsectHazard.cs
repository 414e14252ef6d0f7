using Alburnum.Timber;

namespace Alburnum.Requirements;

/// <summary>Which insects that live where a timber is used count for it. Whatever speaks of insects asks here: the use class, a rulebook's answer, a clause.</summary>
/// <remarks>Insects move no use class. What is required against them, the code says, or the local rules do; nothing is ordered here.</remarks>
public sealed record InsectHazard
{
    private readonly Species? _species;

    private InsectHazard(Species? species) => _species = species;

    /// <summary>False where nobody has said which insects live there.</summary>
    public bool IsSaid { get; private init; }

    /// <summary>Those said to live there that attack such timber, or may.</summary>
    public IReadOnlyList<Insect> Attacking { get; private init; } = [];

    /// <summary>Those said to live there that do not attack such timber.</summary>
    public IReadOnlyList<Insect> Harmless { get; private init; } = [];

    /// <summary>The hazard to a timber.</summary>
    /// <param name="there">Insects that live where it is used; empty where none does, null where that is not known.</param>
    /// <param name="species">The timber; null where it is not known.</param>
    public static InsectHazard Of(IReadOnlyList<Insect>? there, Species? species)
    {
        var byAttack = (there ?? []).ToLookup(insect => insect.MayAttack(species));
        return new(species)
        {
            IsSaid = there is not null,
            Attacking = [.. byAttack[true]],
            Harmless = [.. byAttack[false]],
        };
    }

    /// <summary>Those that may attack such timber and that nobody has ruled out; none where it is said which live there.</summary>
    /// <param name="known">Every insect known.</param>
    public IReadOnlyList<Insect> NotRuledOut(IEnumerable<Insect> known) =>
        IsSaid ? [] : [.. known.Where(insect => insect.MayAttack(_species))];
}
