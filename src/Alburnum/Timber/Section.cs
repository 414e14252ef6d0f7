using Alburnum.Facts;

namespace Alburnum.Timber;

/// <summary>The shape and size of a piece across the grain, nominal sizes in mm.</summary>
public abstract record Section
{
    private protected Section() { }

    /// <summary>Area across the grain, mm².</summary>
    public abstract double AreaMm2 { get; }

    /// <summary>Length of the lateral surface around the section, mm.</summary>
    public abstract double PerimeterMm { get; }

    /// <summary>The smaller side or the diameter, mm: the thickness that rules speak of.</summary>
    public abstract double ThicknessMm { get; }

    /// <summary>The size as written on a drawing, for instance "100 × 75 mm" or "ø 120 mm".</summary>
    public abstract string Label { get; }

    /// <summary>The sizes that name it, mm: width and height of a sawn piece, the diameter of the round of any other.</summary>
    public abstract IReadOnlyList<double> SizesMm { get; }

    /// <summary>Faces around it: four, one of a round piece, flat and arc of a half-round one, two flats and arc of a quartered one.</summary>
    public abstract int FaceCount { get; }

    /// <summary>The same shape with every size multiplied.</summary>
    /// <param name="factor">Above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">A size comes to lie outside 1 to 2000 mm.</exception>
    public abstract Section Scaled(double factor);

    private protected static double Side(double mm, string name) => Require.Within(mm, Ranges.SectionMm, name);

    private protected static string Number(double mm) =>
        mm.ToString("0.#", System.Globalization.CultureInfo.InvariantCulture);
}

/// <summary>A sawn section. Width runs along the first face, height along the second; each 1 to 2000 mm.</summary>
public sealed record RectangularSection : Section
{
    /// <summary>Checks both sides.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A side is outside 1 to 2000 mm.</exception>
    public RectangularSection(double widthMm, double heightMm)
    {
        WidthMm = Side(widthMm, nameof(widthMm));
        HeightMm = Side(heightMm, nameof(heightMm));
    }

    /// <summary>Length of faces 1 and 3, mm.</summary>
    public double WidthMm { get; }

    /// <summary>Length of faces 2 and 4, mm.</summary>
    public double HeightMm { get; }

    /// <inheritdoc/>
    public override double AreaMm2 => WidthMm * HeightMm;

    /// <inheritdoc/>
    public override double PerimeterMm => 2 * (WidthMm + HeightMm);

    /// <inheritdoc/>
    public override double ThicknessMm => Math.Min(WidthMm, HeightMm);

    /// <summary>Diameter of the round piece of equal section modulus, mm: as strong in bending about the stiff axis, of the same timber.</summary>
    /// <remarks>πD³/32 = bh²/6, h the greater side.</remarks>
    public double DiameterOfEqualModulusMm =>
        Math.Cbrt(32 / Math.PI * ThicknessMm * Math.Pow(Math.Max(WidthMm, HeightMm), 2) / 6);

    /// <inheritdoc/>
    public override string Label => $"{Number(WidthMm)} × {Number(HeightMm)} mm";

    /// <inheritdoc/>
    public override IReadOnlyList<double> SizesMm => [WidthMm, HeightMm];

    /// <inheritdoc/>
    public override int FaceCount => 4;

    /// <inheritdoc/>
    public override Section Scaled(double factor) => new RectangularSection(factor * WidthMm, factor * HeightMm);
}

/// <summary>A round section; diameter 1 to 2000 mm.</summary>
public sealed record RoundSection : Section
{
    /// <summary>Checks the diameter.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The diameter is outside 1 to 2000 mm.</exception>
    public RoundSection(double diameterMm) => DiameterMm = Side(diameterMm, nameof(diameterMm));

    /// <summary>Diameter, mm.</summary>
    public double DiameterMm { get; }

    /// <inheritdoc/>
    public override double AreaMm2 => Math.PI * DiameterMm * DiameterMm / 4;

    /// <inheritdoc/>
    public override double PerimeterMm => Math.PI * DiameterMm;

    /// <inheritdoc/>
    public override double ThicknessMm => DiameterMm;

    /// <inheritdoc/>
    public override string Label => $"ø {Number(DiameterMm)} mm";

    /// <inheritdoc/>
    public override IReadOnlyList<double> SizesMm => [DiameterMm];

    /// <inheritdoc/>
    public override int FaceCount => 1;

    /// <inheritdoc/>
    public override Section Scaled(double factor) => new RoundSection(factor * DiameterMm);
}

/// <summary>Half a round piece, sawn through its middle: a flat face and a round one. Diameter of the round 1 to 2000 mm.</summary>
public sealed record HalfRoundSection : Section
{
    /// <summary>Checks the diameter.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The diameter is outside 1 to 2000 mm.</exception>
    public HalfRoundSection(double diameterMm) => DiameterMm = Side(diameterMm, nameof(diameterMm));

    /// <summary>Diameter of the round, mm: the width of the flat face.</summary>
    public double DiameterMm { get; }

    /// <inheritdoc/>
    public override double AreaMm2 => Math.PI * DiameterMm * DiameterMm / 8;

    /// <inheritdoc/>
    public override double PerimeterMm => (1 + Math.PI / 2) * DiameterMm;

    /// <inheritdoc/>
    public override double ThicknessMm => DiameterMm / 2;

    /// <inheritdoc/>
    public override string Label => $"half ø {Number(DiameterMm)} mm";

    /// <inheritdoc/>
    public override IReadOnlyList<double> SizesMm => [DiameterMm];

    /// <inheritdoc/>
    public override int FaceCount => 2;

    /// <inheritdoc/>
    public override Section Scaled(double factor) => new HalfRoundSection(factor * DiameterMm);
}

/// <summary>A quarter of a round piece, sawn twice through its middle: two flat faces and a round one. Diameter of the round 1 to 2000 mm.</summary>
public sealed record QuarteredSection : Section
{
    /// <summary>Checks the diameter.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The diameter is outside 1 to 2000 mm.</exception>
    public QuarteredSection(double diameterMm) => DiameterMm = Side(diameterMm, nameof(diameterMm));

    /// <summary>Diameter of the round, mm: twice the width of a flat face.</summary>
    public double DiameterMm { get; }

    /// <inheritdoc/>
    public override double AreaMm2 => Math.PI * DiameterMm * DiameterMm / 16;

    /// <inheritdoc/>
    public override double PerimeterMm => (1 + Math.PI / 4) * DiameterMm;

    /// <inheritdoc/>
    public override double ThicknessMm => DiameterMm / 2;

    /// <inheritdoc/>
    public override string Label => $"quarter ø {Number(DiameterMm)} mm";

    /// <inheritdoc/>
    public override IReadOnlyList<double> SizesMm => [DiameterMm];

    /// <inheritdoc/>
    public override int FaceCount => 3;

    /// <inheritdoc/>
    public override Section Scaled(double factor) => new QuarteredSection(factor * DiameterMm);
}
