using Alburnum.Impregnation.Diffusing;
using Alburnum.Penetration;
using Alburnum.Requirements;
using Alburnum.Timber;

namespace Alburnum.Records.Facts;

/// <summary>
/// Every fact that the program holds. Made once and given to whoever needs it. Nothing is read before it is asked for, and then once: who measures a photograph
/// does not wait for the rulebooks.
/// </summary>
/// <remarks>Each property refuses with every problem of its files where one is missing or says something that cannot be read.</remarks>
public sealed class FactLibrary
{
    private readonly Lazy<RequirementFacts> _requirements;
    private readonly Lazy<ImpregnationLibrary> _impregnation;
    private readonly Lazy<BoronLaw> _boron;
    private readonly Lazy<IReadOnlyList<Indicator>> _indicators;
    private readonly Lazy<IReadOnlyList<HeartwoodReagent>> _heartwoodReagents;
    private readonly Lazy<SamplingStandard> _sampling;
    private readonly Lazy<IReadOnlyList<string>> _cautions;

    /// <summary>The facts of one data folder.</summary>
    /// <param name="dataFolder">The folder, such as the one that lies beside the program.</param>
    public FactLibrary(string dataFolder)
    {
        _requirements = new(() => RequirementFacts.Load(dataFolder));
        _impregnation = new(() => ImpregnationLibrary.Load(dataFolder));
        _boron = new(() => FactFile.Load(dataFolder, "impregnation/boron.yaml", BoronFile.Read)!);
        _indicators = new(() => FactFile.Load(dataFolder, "indicators.yaml", IndicatorFile.Read));
        _heartwoodReagents = new(() => FactFile.Load(dataFolder, "heartwood-reagents.yaml", HeartwoodReagentFile.Read));
        _sampling = new(() => AttributeTableFile.Load(dataFolder));
        _cautions = new(() => FactFile.Load(dataFolder, "cautions.yaml", CautionFile.Read));
    }

    /// <summary>Species and what is known of them.</summary>
    public SpeciesCatalogue Species => Words.Species;

    /// <summary>Names of components.</summary>
    public ComponentCatalogue Components => Words.Components;

    /// <summary>Names of all rulebooks, in order; none is read for it.</summary>
    public IEnumerable<string> RulebookNames => _requirements.Value.RulebookNames;

    /// <summary>Every edition of every code of practice, in the order of their names.</summary>
    public IEnumerable<Rulebook> Rulebooks => _requirements.Value.Rulebooks;

    /// <summary>Named penetration classes that codes refer to, by name.</summary>
    public IReadOnlyDictionary<string, PenetrationDemand> PenetrationClasses => Words.Classes;

    /// <summary>What EN 335 says of each use class.</summary>
    public IReadOnlyList<UseClassFacts> UseClasses => _requirements.Value.UseClasses;

    /// <summary>What readers of use classes get wrong.</summary>
    public IReadOnlyList<UseClassTrap> UseClassTraps => _requirements.Value.UseClassTraps;

    /// <summary>Natural durability against use class.</summary>
    public NaturalDurability Durability => _requirements.Value.Durability;

    /// <summary>Years in the ground by durability class, from trials.</summary>
    public IReadOnlyList<YearsInGround> YearsInGround => _requirements.Value.YearsInGround;

    /// <summary>What pressure treatment usually reaches.</summary>
    public UsualReach UsualReach => _requirements.Value.UsualReach;

    /// <summary>Rough matches between systems: orientation only.</summary>
    public IReadOnlyList<Equivalence> Equivalences => _requirements.Value.Equivalences;

    /// <summary>What other systems say of timbers, on scales of their own: orientation only.</summary>
    public IReadOnlyList<OtherScale> OtherScales => _requirements.Value.OtherScales;

    /// <summary>Permeabilities, schedules and incising patterns.</summary>
    public ImpregnationLibrary Impregnation => _impregnation.Value;

    /// <summary>How fast boron spreads in wood.</summary>
    public BoronLaw Boron => _boron.Value;

    /// <summary>Indicators that may have been sprayed, and the colours that they leave.</summary>
    public IReadOnlyList<Indicator> Indicators => _indicators.Value;

    /// <summary>Reagents that tell heartwood from sapwood by colour.</summary>
    public IReadOnlyList<HeartwoodReagent> HeartwoodReagents => _heartwoodReagents.Value;

    /// <summary>The indexed sampling plans and their switching rules.</summary>
    public SamplingStandard Sampling => _sampling.Value;

    /// <summary>The cautions printed under every result, in their order.</summary>
    public IReadOnlyList<string> Cautions => _cautions.Value;

    internal RulebookWords Words => _requirements.Value.Words;

    /// <summary>The rulebook of that name; refuses a name that is not there.</summary>
    /// <exception cref="InputRefusedException">No rulebook has that name, or the rulebook cannot be read.</exception>
    public Rulebook Rulebook(string name) => _requirements.Value.Rulebook(name);

    /// <summary>Which rulebooks there are, for a message to those who named another: the nearest first, where one is near.</summary>
    public string RulebookMeantBy(string name) => _requirements.Value.RulebookMeantBy(name);
}
