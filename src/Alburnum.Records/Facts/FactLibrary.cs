using System.Collections.ObjectModel;
using Alburnum.Assaying;
using Alburnum.Impregnation;
using Alburnum.Impregnation.Diffusing;
using Alburnum.Impregnation.Fixing;
using Alburnum.Letters;
using Alburnum.Penetration;
using Alburnum.Requirements;
using Alburnum.Timber;

namespace Alburnum.Records.Facts;

/// <summary>
/// Every fact that the program holds. Made once and given to whoever needs it. No file is read before it is asked for, and then once: who measures a photograph
/// does not wait for the rulebooks.
/// </summary>
/// <remarks>Each property refuses with every problem of its file where that is missing or says something that cannot be read.</remarks>
public sealed class FactLibrary
{
    private static readonly IReadOnlyDictionary<string, PenetrationDemand> NoClasses = ReadOnlyDictionary<
        string,
        PenetrationDemand
    >.Empty;

    private readonly Lazy<string> _sha256;
    private readonly TimeProvider _clock;
    private readonly Lazy<SourceRegister> _sources;
    private readonly Lazy<SpeciesCatalogue> _species;
    private readonly Lazy<Fact<double>> _densityVariation;
    private readonly Lazy<ComponentCatalogue> _components;
    private readonly Lazy<MarkCatalogue> _marks;
    private readonly Lazy<IReadOnlyDictionary<string, PenetrationDemand>> _penetrationClasses;
    private readonly Lazy<RulebookWords> _words;
    private readonly Lazy<RulebookFolder> _rulebooks;
    private readonly Lazy<(IReadOnlyList<UseClassFacts> Classes, IReadOnlyList<UseClassTrap> Traps)> _useClasses;
    private readonly Lazy<(IReadOnlyList<DurabilityRow> Matrix, IReadOnlyList<YearsInGround> Years)> _durability;
    private readonly Lazy<NaturalDurability> _naturalDurability;
    private readonly Lazy<UsualReach> _usualReach;
    private readonly Lazy<CommonChoices> _commonChoices;
    private readonly Lazy<IReadOnlyList<Insect>> _insects;
    private readonly Lazy<IReadOnlyList<Equivalence>> _equivalences;
    private readonly Lazy<IReadOnlyList<OtherScale>> _otherScales;
    private readonly Lazy<ImpregnationLibrary> _impregnation;
    private readonly Lazy<BoronLaw> _boron;
    private readonly Lazy<IReadOnlyList<FixationLaw>> _fixation;
    private readonly Lazy<PreservativeCatalogue> _preservatives;
    private readonly Lazy<ReagentShelf> _reagents;
    private readonly Lazy<HandlingBook> _handling;
    private readonly Lazy<IReadOnlyList<Indicator>> _indicators;
    private readonly Lazy<IReadOnlyList<HeartwoodReagent>> _heartwoodReagents;
    private readonly Lazy<SamplingStandard> _sampling;
    private readonly Lazy<Substances> _substances;
    private readonly Lazy<IReadOnlyList<string>> _cautions;
    private readonly Lazy<IReadOnlyList<Enquiry>> _commonestEnquiries;
    private readonly Lazy<IReadOnlyList<Letter>> _letters;

    /// <summary>The facts of one data folder.</summary>
    /// <param name="dataFolder">The folder, such as the one that lies beside the program.</param>
    /// <param name="clock">Tells today, which a rulebook of the user's is held against; default: the computer's.</param>
    public FactLibrary(string dataFolder, TimeProvider? clock = null)
    {
        _sha256 = new(() => FactFile.Sha256OfAll(dataFolder));
        _clock = clock ?? TimeProvider.System;
        _sources = new(() => SourceRegister.Load(dataFolder));
        _species = new(() =>
        {
            var species = Read("timber/species.yaml", SpeciesFile.Read);
            return new(species, Read("timber/names.yaml", root => TimberNameFile.Read(root, species)));
        });
        _densityVariation = In("timber/density.yaml", DensityFile.Read);
        _components = new(() =>
        {
            var components = Read("components.yaml", ComponentFile.Read);
            return new(components, Read("component-names.yaml", root => ComponentFile.ReadNames(root, components)));
        });
        _marks = In("marks.yaml", PreservativeFile.ReadMarks);
        _penetrationClasses = In("penetration-classes.yaml", root => PenetrationClassFile.Read(root, NoClasses));
        _words = new(() =>
            new(Components, Species, PenetrationClasses, Insects, _sources, _rulebooks!) { Today = () => Today }
        );
        _rulebooks = new(() => new(dataFolder, _words));
        _useClasses = In("use-classes.yaml", root => (UseClassFile.ReadClasses(root), UseClassFile.ReadTraps(root)));
        _durability = In("durability.yaml", root => (DurabilityFile.ReadMatrix(root), DurabilityFile.ReadYears(root)));
        _naturalDurability = new(() => new(_durability.Value.Matrix, _durability.Value.Years));
        _usualReach = In("usual-reach.yaml", DurabilityFile.ReadReach);
        _commonChoices = In("common-choices.yaml", root => CommonChoicesFile.Read(root, Components, Species));
        _insects = In("insects.yaml", InsectFile.Read);
        _equivalences = In("equivalence.yaml", UseClassFile.ReadEquivalences);
        _otherScales = In("timber/other-scales.yaml", root => OtherScaleFile.Read(root, Species));
        _impregnation = new(() => ImpregnationLibrary.Load(dataFolder, _sources));
        _boron = In("impregnation/boron.yaml", root => BoronFile.Read(root)!);
        _fixation = In("impregnation/fixation.yaml", root => FixationFile.Read(root, Preservatives));
        _preservatives = In(
            "preservatives.yaml",
            root => new PreservativeCatalogue(PreservativeFile.Read(root, Components))
        );
        _reagents = In("reagents.yaml", root => ReagentFile.Read(root, Indicators, Preservatives));
        _handling = In("handling.yaml", root => HandlingFile.Read(root, Preservatives));
        _indicators = In("indicators.yaml", IndicatorFile.Read);
        _heartwoodReagents = In("heartwood-reagents.yaml", HeartwoodReagentFile.Read);
        _substances = In("substances.yaml", SubstanceFile.Read);
        _sampling = new(() => AttributeTableFile.Load(dataFolder, _sources));
        _cautions = In("cautions.yaml", CautionFile.Read);
        _commonestEnquiries = In("commonest-enquiries.yaml", root => EnquiryFile.Read(root, this));
        _letters = In("letters.yaml", LetterFile.Read);

        Lazy<T> In<T>(string file, Func<FactRow, T> read) => new(() => Read(file, read));
        T Read<T>(string file, Func<FactRow, T> read) => FactFile.Load(dataFolder, file, _sources, read);
    }

    /// <summary>A plant's own schedules, from a file of the same form as the program's; its rows may name the program's sources.</summary>
    /// <param name="path">Path of the file.</param>
    /// <exception cref="InputRefusedException">The file is missing or says something that cannot be read.</exception>
    public IReadOnlyList<Fact<Schedule>> ReadSchedules(string path) =>
        ImpregnationLibrary.ReadSchedules(path, _sources);

    /// <summary>SHA-256 over all fact files, rulebooks among them: that of the lines "hash, two spaces, path" in the order of the paths.</summary>
    public string Sha256 => _sha256.Value;

    /// <summary>Today, where the reader sits: by the clock of the world it may be a day to come.</summary>
    public DateOnly Today => DateOnly.FromDateTime(_clock.GetLocalNow().DateTime);

    /// <summary>Documents that the facts are taken from.</summary>
    public SourceRegister Sources => _sources.Value;

    /// <summary>Species and what is known of them.</summary>
    public SpeciesCatalogue Species => _species.Value;

    /// <summary>Coefficient of variation of the density within a species, above 0 to 1.</summary>
    public Fact<double> DensityVariation => _densityVariation.Value;

    /// <summary>Names of components.</summary>
    public ComponentCatalogue Components => _components.Value;

    /// <summary>Classes and marks of every system known.</summary>
    public MarkCatalogue Marks => _marks.Value;

    /// <summary>Named penetration classes that codes refer to, by name.</summary>
    public IReadOnlyDictionary<string, PenetrationDemand> PenetrationClasses => _penetrationClasses.Value;

    /// <summary>The codes of practice that ship.</summary>
    public RulebookFolder Rulebooks => _rulebooks.Value;

    /// <summary>What EN 335 says of each use class.</summary>
    public IReadOnlyList<UseClassFacts> UseClasses => _useClasses.Value.Classes;

    /// <summary>What readers of use classes get wrong.</summary>
    public IReadOnlyList<UseClassTrap> UseClassTraps => _useClasses.Value.Traps;

    /// <summary>Natural durability against use class.</summary>
    public NaturalDurability Durability => _naturalDurability.Value;

    /// <summary>What pressure treatment usually reaches.</summary>
    public UsualReach UsualReach => _usualReach.Value;

    /// <summary>What is commonly chosen for a component.</summary>
    public CommonChoices CommonChoices => _commonChoices.Value;

    /// <summary>Insects that attack dry timber.</summary>
    public IReadOnlyList<Insect> Insects => _insects.Value;

    /// <summary>Rough matches between systems: orientation only.</summary>
    public IReadOnlyList<Equivalence> Equivalences => _equivalences.Value;

    /// <summary>What other systems say of timbers, on scales of their own: orientation only.</summary>
    public IReadOnlyList<OtherScale> OtherScales => _otherScales.Value;

    /// <summary>Permeabilities, schedules and incising patterns.</summary>
    public ImpregnationLibrary Impregnation => _impregnation.Value;

    /// <summary>How fast boron spreads in wood.</summary>
    public BoronLaw Boron => _boron.Value;

    /// <summary>How fast preservatives fix in wood, those of which a rate is known.</summary>
    public IReadOnlyList<FixationLaw> Fixation => _fixation.Value;

    /// <summary>Kinds of preservative.</summary>
    public PreservativeCatalogue Preservatives => _preservatives.Value;

    /// <summary>What shows which preservative, and what a laboratory does.</summary>
    public ReagentShelf Reagents => _reagents.Value;

    /// <summary>Fixings, moisture, fixation, leaching, burning, waste and storage of treated timber.</summary>
    public HandlingBook Handling => _handling.Value;

    /// <summary>Indicators that may have been sprayed, and the colours that they leave.</summary>
    public IReadOnlyList<Indicator> Indicators => _indicators.Value;

    /// <summary>Reagents that tell heartwood from sapwood by colour.</summary>
    public IReadOnlyList<HeartwoodReagent> HeartwoodReagents => _heartwoodReagents.Value;

    /// <summary>The indexed sampling plans and their switching rules.</summary>
    public SamplingStandard Sampling => _sampling.Value;

    /// <summary>What laboratories measure and retentions count, and what one holds of the other.</summary>
    public Substances Substances => _substances.Value;

    /// <summary>The cautions printed under every result, in their order.</summary>
    public IReadOnlyList<string> Cautions => _cautions.Value;

    /// <summary>What is asked most, the commonest first: a list of our own.</summary>
    public IReadOnlyList<Enquiry> CommonestEnquiries => _commonestEnquiries.Value;

    /// <summary>The commonest letters of lay clients, with their answers.</summary>
    public IReadOnlyList<Letter> Letters => _letters.Value;

    internal RulebookWords Words => _words.Value;
}
