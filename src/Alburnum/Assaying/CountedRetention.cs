using Alburnum.Measures;

namespace Alburnum.Assaying;

/// <summary>What came of counting a sample's figures.</summary>
public abstract record Counting
{
    private protected Counting() { }
}

/// <summary>Why figures cannot be counted.</summary>
public enum CountingFault
{
    /// <summary>They are in units of which one does not follow from the other without the density or depth of the zone.</summary>
    UnitsDiffer,

    /// <summary>Two are of the same substance, or count as the same.</summary>
    CountedTwice,

    /// <summary>More than one was measured, and nothing says what they count as.</summary>
    NothingToCountAs,

    /// <summary>One shares no element with anything that is counted.</summary>
    SharesNothing,

    /// <summary>One shares elements with more than one substance that is counted, or more than one element with one.</summary>
    FitsSeveral,

    /// <summary>A substance that is counted was not measured.</summary>
    NotMeasured,
}

/// <summary>They cannot be counted.</summary>
/// <param name="Fault">Why.</param>
public sealed record NotCounted(CountingFault Fault) : Counting;

/// <summary>One figure, counted.</summary>
/// <param name="Reported">The figure.</param>
/// <param name="Factor">From what was measured to what is counted.</param>
public sealed record CountedPart(ReportedContent Reported, SubstanceFactor Factor)
{
    /// <summary>The content counted, in the unit reported.</summary>
    internal double Content => Reported.Content.Value * Factor.Factor;

    internal EvaluatedUncertainty Uncertainty =>
        new(Reported.Content.StandardUncertainty * Factor.Factor, Reported.DegreesOfFreedom);
}

/// <summary>A part of a product that was measured in another share than its formula gives it.</summary>
/// <param name="Compound">The part.</param>
/// <param name="Found">Its share of the parts measured, 0 to 1.</param>
/// <param name="Expected">What the formula gives it of the same parts, 0 to 1.</param>
public sealed record PartOffFormula(Compound Compound, Estimate Found, double Expected)
{
    // A share that no batch of the product would have. Our own choice: wider than makers' tolerances and what fixation and leaching shift.
    private const double Gross = 0.5;

    /// <summary>Least share that the formula's limits allow, 0 to 1.</summary>
    public double Least { get; init; } = Expected;

    /// <summary>Greatest share that they allow, 0 to 1.</summary>
    public double Most { get; init; } = Expected;

    /// <summary>Whether the part was not found: <see cref="Found"/> is then the greatest share that its limit allows.</summary>
    public bool IsAtMost { get; init; }

    /// <summary>Whether the laboratory states its uncertainty of every part; where not, that of <see cref="Found"/> is not known.</summary>
    public bool IsUncertaintyKnown { get; init; } = true;

    /// <summary>Whether the share is outside the formula's limits by more than half of what the formula gives it: what was analysed is then hardly that product.</summary>
    public bool IsGross => Difference > Gross * Expected;

    /// <summary>Whether the share is outside them by more than its uncertainty allows (k = 2); where that is not known, whether it is so grossly.</summary>
    internal bool IsOff => IsUncertaintyKnown ? Difference > 2 * Found.StandardUncertainty : IsGross;

    private double Difference => Math.Max(Least - Found.Value, IsAtMost ? 0 : Found.Value - Most);
}

/// <summary>A sample's figures as one retention.</summary>
public sealed record CountedRetention : Counting
{
    private const double MgInKg = 1e6;
    private const double MgInPercent = 1e4;

    private CountedRetention(AssayBasis basis, IReadOnlyList<CountedPart> parts) => (Basis, Parts) = (basis, parts);

    /// <summary>How they were counted.</summary>
    public AssayBasis Basis { get; }

    /// <summary>The figures. At least one, all in one unit.</summary>
    public IReadOnlyList<CountedPart> Parts { get; }

    /// <summary>Share of the product that was measured, above 0 to 1; 1 where no product is counted.</summary>
    public double ShareOfProduct =>
        Basis.Product is { } product
            ? product
                .Parts.Where(part => Parts.Any(each => each.Factor.Counted == part.Compound))
                .Sum(part => part.Share)
            : 1;

    /// <summary>Parts of the product that no figure is of: the retention takes them to be there as the formula has them. Empty where no product is counted.</summary>
    public IReadOnlyList<Compound> NotAnalysed =>
        [
            .. (Basis.Product?.Parts ?? [])
                .Select(part => part.Compound)
                .Where(part => Parts.All(each => each.Factor.Counted != part)),
        ];

    /// <summary>Whether nothing was found: the figures below are then limits.</summary>
    public bool IsBelowDetection => Parts.All(part => part.Reported.IsBelowDetection);

    /// <summary>Whether every figure of the laboratory says how uncertain it is; otherwise the standard uncertainties below mean nothing, and nothing is to be held against a demand.</summary>
    public bool IsLaboratoryUncertaintyKnown => Parts.All(part => part.Reported.IsUncertaintyKnown);

    /// <summary>The same of the density of the zone; true where none is used.</summary>
    public bool IsDensityUncertaintyKnown => Basis.Density is not StatedZoneDensity { IsUncertaintyKnown: false };

    /// <summary>Whether the standard uncertainty of <see cref="KgPerM3"/>, and of <see cref="GPerM2"/>, means anything.</summary>
    public bool IsVolumeUncertaintyKnown => IsLaboratoryUncertaintyKnown && (IsDensityUncertaintyKnown || !IsByMass);

    /// <summary>Whether that of <see cref="MgPerKg"/> does.</summary>
    public bool IsMassUncertaintyKnown => IsLaboratoryUncertaintyKnown && (IsDensityUncertaintyKnown || IsByMass);

    /// <summary>Mass in the oven-dry mass of wood, mg/kg; null where only a content by volume is known, and no density.</summary>
    public Estimate? MgPerKg =>
        Unit switch
        {
            ContentUnit.MgPerKg => Counted,
            ContentUnit.PercentByMass => Times(Counted, MgInPercent),
            _ => KgPerM3 is { } known && Basis.Density is { KgPerM3: var density }
                ? Times(Over(known, density), MgInKg)
                : null,
        };

    /// <summary>Mass in the volume of the zone, kg/m³; null where density or depth of the zone is not known.</summary>
    public Estimate? KgPerM3 =>
        Unit switch
        {
            ContentUnit.KgPerM3 => Counted,
            ContentUnit.GPerM2 => Basis.ZoneDepthMm is { } depth ? Times(Counted, 1 / depth) : null,
            _ => MgPerKg is { } known && Basis.Density is { KgPerM3: var density }
                ? new(
                    known.Value / MgInKg * density.Value,
                    UncertaintyBudget.Combine(LaboratoryKgPerM3, DensityKgPerM3)
                )
                : null,
        };

    /// <summary>Mass under a square metre of face, g/m²; null where depth, or density, of the zone is not known.</summary>
    public Estimate? GPerM2 =>
        Unit == ContentUnit.GPerM2 ? Counted
        : KgPerM3 is { } known && Basis.ZoneDepthMm is { } depth ? Times(known, depth)
        : null;

    /// <summary>Part of the standard uncertainty of <see cref="KgPerM3"/> that comes from the density of the zone, kg/m³.</summary>
    public double DensityKgPerM3 =>
        IsByMass && Basis.Density is { KgPerM3: var density }
            ? MgPerKg!.Value.Value / MgInKg * density.StandardUncertainty
            : 0;

    /// <summary>Part of it that comes from the laboratory, kg/m³.</summary>
    public double LaboratoryKgPerM3 =>
        IsByMass && Basis.Density is { KgPerM3: var density }
            ? MgPerKg!.Value.StandardUncertainty / MgInKg * density.Value
            : KgPerM3?.StandardUncertainty ?? 0;

    /// <summary>Degrees of freedom of the part that comes from the laboratory, 1 or more; infinite where it states its uncertainty.</summary>
    public double DegreesOfFreedom => EvaluatedUncertainty.Combine([.. Parts.Select(Uncertainty)]).DegreesOfFreedom;

    /// <summary>
    /// Parts of the product whose share of what was measured differs from that of its formula by more than the figures' uncertainties allow (k = 2). One that was
    /// not found may have any share up to that of its limit: it differs where even that falls short. Where the uncertainty of a figure is not stated, those that
    /// differ grossly.
    /// </summary>
    public IReadOnlyList<PartOffFormula> PartsOffFormula
    {
        get
        {
            if (Basis.Product is not { } product || Parts.Count < 2 || IsBelowDetection)
                return [];
            var (whole, share) = (Parts.Sum(Content), ShareOfProduct);
            return
            [
                .. Parts
                    .Select(part =>
                    {
                        var given = product.Parts.First(each => each.Compound == part.Factor.Counted);
                        return new PartOffFormula(
                            given.Compound,
                            part.Reported.IsBelowDetection ? GreatestShareOf(part) : ShareOf(part, whole),
                            given.Share / share
                        )
                        {
                            Least = given.Least / share,
                            Most = Math.Min(1, given.Most / share),
                            IsAtMost = part.Reported.IsBelowDetection,
                            IsUncertaintyKnown = IsLaboratoryUncertaintyKnown,
                        };
                    })
                    .Where(part => part.IsOff),
            ];
        }
    }

    private ContentUnit Unit => Parts[0].Reported.Unit;

    private bool IsByMass => Unit is ContentUnit.MgPerKg or ContentUnit.PercentByMass;

    // Where one of several was not found, it may be anything from nothing to its limit: the middle, with the spread of an even chance.
    private Estimate Counted
    {
        get
        {
            var share = ShareOfProduct;
            return new(
                Parts.Sum(Content) / share,
                EvaluatedUncertainty.Combine([.. Parts.Select(Uncertainty)]).U / share
            );
        }
    }

    private double Content(CountedPart part) => IsPerhapsThere(part) ? part.Content / 2 : part.Content;

    private EvaluatedUncertainty Uncertainty(CountedPart part) =>
        IsPerhapsThere(part) ? EvaluatedUncertainty.Known(part.Content / Math.Sqrt(12)) : part.Uncertainty;

    private bool IsPerhapsThere(CountedPart part) => part.Reported.IsBelowDetection && !IsBelowDetection;

    // A share f of the whole feels its own part by 1 - f, every other by f.
    private Estimate ShareOf(CountedPart part, double whole)
    {
        var share = Content(part) / whole;
        return new(
            share,
            UncertaintyBudget.Combine([
                .. Parts.Select(each => (each == part ? 1 - share : share) * Uncertainty(each).U / whole),
            ])
        );
    }

    // As much as its limit allows, of nothing else than what was found beside it.
    private Estimate GreatestShareOf(CountedPart part)
    {
        List<CountedPart> found = [.. Parts.Where(each => !each.Reported.IsBelowDetection)];
        var whole = found.Sum(Content) + part.Content;
        var share = part.Content / whole;
        return new(share, share * UncertaintyBudget.Combine([.. found.Select(each => Uncertainty(each).U / whole)]));
    }

    /// <summary>Counts the figures of one sample.</summary>
    /// <param name="contents">The figures. At least one.</param>
    /// <param name="basis">What they are counted as.</param>
    /// <param name="substances">What substances hold.</param>
    public static Counting Of(IReadOnlyList<ReportedContent> contents, AssayBasis basis, Substances substances)
    {
        ArgumentNullException.ThrowIfNull(contents);
        ArgumentNullException.ThrowIfNull(basis);
        ArgumentNullException.ThrowIfNull(substances);
        Require.Positive(contents.Count, "figures");
        if (contents.Select(each => each.Unit).Distinct().Count() > 1)
            return contents.All(each => each.Unit is ContentUnit.MgPerKg or ContentUnit.PercentByMass)
                ? Of([.. contents.Select(InMgPerKg)], basis, substances)
                : new NotCounted(CountingFault.UnitsDiffer);
        IReadOnlyList<Compound> wanted = basis.Product is { } product
            ? [.. product.Parts.Select(part => part.Compound)]
            : basis.CountedAs;
        if (wanted.Count == 0)
            return contents.Count == 1
                ? new CountedRetention(basis, [new(contents[0], SubstanceFactor.Itself(contents[0].Measured))])
                : new NotCounted(CountingFault.NothingToCountAs);
        var parts = new List<CountedPart>();
        foreach (var content in contents)
        {
            var factors = wanted.Contains(content.Measured)
                ? [SubstanceFactor.Itself(content.Measured)]
                : wanted.Select(each => substances.Between(content.Measured, each)).OfType<SubstanceFactor>().ToList();
            if (factors is not [var factor])
                return new NotCounted(
                    wanted.Any(each => Substances.SharesAny(content.Measured, each))
                        ? CountingFault.FitsSeveral
                        : CountingFault.SharesNothing
                );
            if (parts.Exists(part => part.Factor.Counted == factor.Counted))
                return new NotCounted(CountingFault.CountedTwice);
            parts.Add(new(content, factor));
        }
        return basis.Product is null && parts.Count < wanted.Count
            ? new NotCounted(CountingFault.NotMeasured)
            : new CountedRetention(basis, parts);
    }

    private static ReportedContent InMgPerKg(ReportedContent content) =>
        content.Unit == ContentUnit.MgPerKg
            ? content
            : content with
            {
                Unit = ContentUnit.MgPerKg,
                Content = Times(content.Content, MgInPercent),
            };

    private static Estimate Times(Estimate estimate, double factor) =>
        new(estimate.Value * factor, estimate.StandardUncertainty * factor);

    // The two are independent: relative uncertainties add in squares.
    private static Estimate Over(Estimate above, Estimate below) =>
        new(
            above.Value / below.Value,
            UncertaintyBudget.Combine(
                above.StandardUncertainty / below.Value,
                above.Value * below.StandardUncertainty / (below.Value * below.Value)
            )
        );
}
