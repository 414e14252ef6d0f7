namespace Alburnum.Reports.Impregnation;

/// <summary>What a charge took up, beside what was expected. Fields as in docs/json/charge.md.</summary>
public sealed record ChargeAccountDocument
{
    /// <summary>What the charge is.</summary>
    public required string Name { get; init; }

    /// <summary>Pieces.</summary>
    public required int PieceCount { get; init; }

    /// <summary>Volume of the timber, m³.</summary>
    public required double VolumeM3 { get; init; }

    /// <summary>Solution kept by the tank, L.</summary>
    public required Estimate NetByTankL { get; init; }

    /// <summary>Solution kept by weight, L; null where the timber was not weighed twice.</summary>
    public Estimate? NetByWeightL { get; init; }

    /// <summary>Tank less weight, L; null likewise.</summary>
    public Estimate? DiscrepancyL { get; init; }

    /// <summary>Solution in the timber at the end of the pressure period, L; null where it was not read.</summary>
    public Estimate? GrossL { get; init; }

    /// <summary>Solution given back at release, L; null likewise.</summary>
    public Estimate? KickbackL { get; init; }

    /// <summary>Net uptake, L to the m³ of timber: by weight where weighed, otherwise by the tank.</summary>
    public required Estimate NetLPerM3 { get; init; }

    /// <summary>Net uptake that the plan expected, L to the m³ of timber.</summary>
    public required Estimate ExpectedLPerM3 { get; init; }

    /// <summary>Whether the uptake lies within two standard uncertainties of it.</summary>
    public required bool AsExpected { get; init; }

    /// <summary>Product, kg to the m³ of timber: of the whole piece, not of the zone.</summary>
    public required Estimate RetentionKgPerM3 { get; init; }

    /// <summary>What makes that uncertain, part by part.</summary>
    public required IReadOnlyList<UncertainPartDocument> RetentionBudget { get; init; }

    /// <summary>Product kept beyond what the solution kept carried at the strength before, as a share of that; null where the strength after was not measured.</summary>
    public Estimate? SelectiveShare { get; init; }

    /// <summary>Where the product was expected, with walls that take up nothing and with others.</summary>
    public required IReadOnlyList<ChargeProductDocument> Product { get; init; }

    /// <summary>What the figures of the product mean and rest on, one sentence each.</summary>
    public required IReadOnlyList<string> ProductNotes { get; init; }

    /// <summary>What the readings say of each other, one sentence each.</summary>
    public required IReadOnlyList<string> Findings { get; init; }

    /// <summary>What was assumed for the plan because nobody said it, one sentence each.</summary>
    public required IReadOnlyList<string> Assumptions { get; init; }

    /// <summary>What to mind, one sentence each.</summary>
    public required IReadOnlyList<string> Cautions { get; init; }
}

/// <summary>One part of an uncertainty.</summary>
/// <param name="Cause">What it is.</param>
/// <param name="KgPerM3">Standard uncertainty from it alone, kg/m³.</param>
public sealed record UncertainPartDocument(string Cause, double KgPerM3);
