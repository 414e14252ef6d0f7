using Alburnum.Facts;
using Alburnum.Impregnation;
using Alburnum.Impregnation.Incising;
using Alburnum.Impregnation.Prediction;
using Alburnum.Timber;

namespace Alburnum.Records.Facts;

/// <summary>What predictions rest on: permeabilities, schedules and incising patterns, read from the data folder.</summary>
public sealed class ImpregnationLibrary
{
    private const string PermeabilityFile = "impregnation/permeability.yaml";
    private const string ScheduleFile = "impregnation/schedules.yaml";
    private const string IncisingFile = "impregnation/incising.yaml";
    private const string AnyWood = "any";
    private readonly IReadOnlyList<(IReadOnlyList<string> Woods, PermeabilityLaw Law)> _laws;
    private readonly IReadOnlyList<(IReadOnlyList<string> Woods, FlowDirections Directions)> _directions;

    private ImpregnationLibrary(
        IReadOnlyList<(IReadOnlyList<string> Woods, PermeabilityLaw Law)> laws,
        IReadOnlyList<(IReadOnlyList<string> Woods, FlowDirections Directions)> directions,
        IReadOnlyList<Fact<Schedule>> schedules,
        IReadOnlyList<(string Name, Fact<IncisingPattern> Pattern)> patterns,
        IncisingPenalty penalty
    ) => (_laws, _directions, Schedules, Patterns, Penalty) = (laws, directions, schedules, patterns, penalty);

    /// <summary>Every schedule, in the order of the file.</summary>
    public IReadOnlyList<Fact<Schedule>> Schedules { get; }

    /// <summary>Every incising pattern with its name, from light to heavy.</summary>
    public IReadOnlyList<(string Name, Fact<IncisingPattern> Pattern)> Patterns { get; }

    /// <summary>What design codes take off for incising.</summary>
    public IncisingPenalty Penalty { get; }

    /// <summary>Reads the three files, or refuses with every problem in them.</summary>
    internal static ImpregnationLibrary Load(string dataFolder, Lazy<SourceRegister> sources)
    {
        var problems = new List<InputProblem>();
        var laws = new List<(IReadOnlyList<string>, PermeabilityLaw)>();
        var directions = new List<(IReadOnlyList<string> Woods, FlowDirections Directions)>();
        var schedules = new List<Fact<Schedule>>();
        var patterns = new List<(string, Fact<IncisingPattern>)>();
        IncisingPenalty? penalty = null;
        Read(
            PermeabilityFile,
            root =>
            {
                Each(root, "directions", row => directions.Add((row.Texts("woods"), Directions(row))));
                if (DirectionsOf(directions, AnyWood) is { } usual)
                    Each(root, "permeability", row => laws.Add(Law(row, usual)));
                else
                    root.Refuse("directions", $"no row for {AnyWood}", "one for woods without a figure of their own");
            }
        );
        Read(ScheduleFile, root => Each(root, "schedules", row => AddSchedule(row, ScheduleFile, schedules, problems)));
        Read(
            IncisingFile,
            root =>
            {
                Each(root, "patterns", row => patterns.Add((row.Text("name"), new(Pattern(row), row.Provenance()))));
                var row = root.OptionalRow("penalty");
                penalty = row is null ? null : TakenOff(row);
            }
        );
        if (problems.Count == 0 && penalty is null)
            problems.Add(new InputProblem(IncisingFile, 0, "", "penalty", "nothing", "the design code's factors"));
        return problems.Count == 0
            ? new ImpregnationLibrary(laws, directions, schedules, patterns, penalty!)
            : throw new InputRefusedException(problems);

        void Read(string file, Action<FactRow> read) => FactFile.ReadInto(dataFolder, file, problems, sources, read);
    }

    /// <summary>A plant's own schedules, from a file of the same form as the program's.</summary>
    /// <param name="path">Path of the file.</param>
    /// <param name="sources">The sources that its rows may name beside its own.</param>
    /// <exception cref="InputRefusedException">The file is missing or says something that cannot be read.</exception>
    internal static IReadOnlyList<Fact<Schedule>> ReadSchedules(string path, Lazy<SourceRegister> sources)
    {
        if (!File.Exists(path))
            throw new InputRefusedException(new InputProblem(path, 0, "", "", "no such file", "a schedule file"));
        var problems = new List<InputProblem>();
        var schedules = new List<Fact<Schedule>>();
        var name = Path.GetFileName(path);
        FactFile.Read(
            path,
            name,
            problems,
            root =>
            {
                Each(root, "schedules", row => AddSchedule(row, name, schedules, problems));
                if (root.Has("schedules") && root.Rows("schedules").Count == 0)
                    root.Refuse("schedules", "no row", "one schedule or more");
            },
            sources
        );
        return problems.Count == 0 ? schedules : throw new InputRefusedException(problems);
    }

    /// <summary>Whether there is a law for the sapwood or heartwood of a species.</summary>
    public bool Knows(Species species, bool isHeartwood)
    {
        ArgumentNullException.ThrowIfNull(species);
        return OwnOf(species, isHeartwood) is not null
            || (TreatabilityOf(species, isHeartwood) is { } treatability && RowOf(treatability) is not null);
    }

    /// <summary>The law for the sapwood or heartwood of a species: its genus's own, otherwise its treatability class's. So are the directions, apart from it.</summary>
    /// <exception cref="InputRefusedException">Neither the genus nor the class has a row.</exception>
    public PermeabilityLaw Of(Species species, bool isHeartwood)
    {
        var own = species
            .Genera.Select(genus => DirectionsOf(_directions, $"{genus} {ZoneName(isHeartwood)}"))
            .FirstOrDefault(directions => directions is not null);
        var law = OwnOf(species, isHeartwood) ?? OfItsClass(species, isHeartwood);
        return own is null ? law : law with { Directions = own };
    }

    private PermeabilityLaw OfItsClass(Species species, bool isHeartwood)
    {
        if (TreatabilityOf(species, isHeartwood) is not { } treatability)
            throw new InputRefusedException(
                new InputProblem(
                    "species",
                    0,
                    species.Name,
                    $"{ZoneName(isHeartwood)} treatability",
                    "not known",
                    "a class in data/timber/species.yaml, or a row for the genus in data/impregnation/permeability.yaml"
                )
            );
        return OfClass(treatability);
    }

    /// <summary>The law for a treatability class.</summary>
    /// <exception cref="InputRefusedException">The class has no row.</exception>
    public PermeabilityLaw OfClass(ClassRange treatability)
    {
        return RowOf(treatability)
            ?? throw new InputRefusedException(
                new InputProblem(
                    PermeabilityFile,
                    0,
                    "",
                    "woods",
                    $"no row for {RowName(treatability)}",
                    "a row for the class, or another class"
                )
            );
    }

    private PermeabilityLaw? RowOf(ClassRange treatability) => Named(RowName(treatability));

    private static string RowName(ClassRange treatability) =>
        $"class {new ClassRange(treatability.Low, treatability.High).Label}";

    private PermeabilityLaw? OwnOf(Species species, bool isHeartwood) =>
        species
            .Genera.Select(genus => Named($"{genus} {ZoneName(isHeartwood)}"))
            .FirstOrDefault(law => law is not null);

    private static ClassRange? TreatabilityOf(Species species, bool isHeartwood) =>
        (isHeartwood ? species.HeartwoodTreatability : species.SapwoodTreatability)?.Value;

    private static string ZoneName(bool isHeartwood) => isHeartwood ? "heartwood" : "sapwood";

    private static FlowDirections? DirectionsOf(
        IReadOnlyList<(IReadOnlyList<string> Woods, FlowDirections Directions)> rows,
        string wood
    ) => rows.FirstOrDefault(row => row.Woods.Contains(wood, StringComparer.OrdinalIgnoreCase)).Directions;

    private PermeabilityLaw? Named(string wood) =>
        _laws.FirstOrDefault(row => row.Woods.Contains(wood, StringComparer.OrdinalIgnoreCase)).Law;

    private static void Each(FactRow root, string field, Action<FactRow> read)
    {
        foreach (var row in root.Rows(field))
            read(row);
    }

    private static FlowDirections Directions(FactRow row) =>
        new(
            row.Text("name"),
            row.Number("tangentialToRadial", 0.01, 100),
            row.Number("alongToAcross", 1, 1e7),
            row.Provenance()
        );

    private static (IReadOnlyList<string>, PermeabilityLaw) Law(FactRow row, FlowDirections usual)
    {
        var woods = row.Texts("woods");
        var spread = row.OptionalRow("spread");
        double Spread(string field) => spread?.Number(field, 0, 5) ?? 0;
        if (spread is null)
            row.Refuse("spread", "nothing", "batch, piece and within");
        var law = new PermeabilityLaw
        {
            Name = row.Text("name"),
            LateralMedianM2 = 1e-18 * row.Number("lateralNm2", 1e-5, 1e7),
            Directions = usual,
            BatchLnSpread = Spread("batch"),
            PieceLnSpread = Spread("piece"),
            WithinLnSpread = Spread("within"),
            IsInference = row.Word("inference", [("yes", true), ("no", false)]),
            Provenance = row.Provenance(),
        };
        return (woods, law);
    }

    private static void AddSchedule(
        FactRow row,
        string file,
        List<Fact<Schedule>> schedules,
        List<InputProblem> problems
    )
    {
        var name = row.Text("name");
        var steps = new List<ScheduleStep>();
        var before = problems.Count;
        foreach (var step in row.Rows("steps"))
        {
            steps.Add(
                new ScheduleStep(
                    step.Text("step"),
                    step.Word("against", [("air", Contact.Air), ("liquid", Contact.Liquid)]),
                    step.Number("kPa", Ranges.PressureKPa),
                    step.Number("rampMinutes", Ranges.StepMinutes),
                    step.Number("holdMinutes", Ranges.StepMinutes),
                    step.Has("celsius") ? step.Number("celsius", Ranges.SteamCelsius) : null
                )
            );
        }
        var provenance = row.Provenance();
        if (problems.Count > before)
            return;
        try
        {
            schedules.Add(new(ScheduleSteps.Build(name, steps, file), provenance));
        }
        catch (InputRefusedException refused)
        {
            problems.AddRange(refused.Problems);
        }
    }

    private static IncisingPattern Pattern(FactRow row)
    {
        var length = row.Number("lengthMm", Ranges.IncisionLengthMm);
        var width = row.Number("widthMm", Ranges.IncisionWidthMm);
        return new(
            row.Number("depthMm", Ranges.IncisionDepthMm),
            length,
            width,
            Math.Max(length, row.Number("alongMm", Ranges.IncisionsAlongMm with { Low = length })),
            Math.Max(width, row.Number("acrossMm", Ranges.IncisionsAcrossMm with { Low = width })),
            row.Number("stagger", Ranges.IncisionStagger)
        );
    }

    private static IncisingPenalty TakenOff(FactRow row) =>
        new IncisingPenalty
        {
            Source = row.Provenance(),
            ModulusOfElasticity = row.Number("modulusOfElasticity", 0.1, 1),
            Strength = row.Number("strength", 0.1, 1),
            Bearing = row.Number("bearing", 0.1, 1),
            GreatestDepthMm = row.Number("greatestDepthMm", Ranges.IncisionDepthMm),
            GreatestLengthMm = row.Number("greatestLengthMm", Ranges.IncisionLengthMm),
            GreatestDensityPerM2 = row.Number("greatestDensityPerM2", 1, 1e6),
        };
}
