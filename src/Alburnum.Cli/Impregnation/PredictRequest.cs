namespace Alburnum.Cli.Impregnation;

/// <summary>What a prediction is asked about, as typed: checked and put together by <see cref="PredictInput"/>.</summary>
internal sealed record PredictRequest
{
    public required string Species { get; init; }

    public required string Section { get; init; }

    public double? HeartRadiusMm { get; init; }

    public string? Pith { get; init; }

    public double? SapwoodMm { get; init; }

    public string? Position { get; init; }

    public double? LogDiameterMm { get; init; }

    public string? All { get; init; }

    public double MoisturePercent { get; init; } = 25;

    public double? DensityKgPerM3 { get; init; }

    public string Schedule { get; init; } = "full cell";

    public string? SchedulesFile { get; init; }

    public double? PeakKPa { get; init; }

    public double? PressureMinutes { get; init; }

    public double Celsius { get; init; } = 20;

    public string? Incise { get; init; }

    public double? DepthMm { get; init; }

    public string Zone { get; init; } = "lateral";

    public bool WholeSapwood { get; init; }

    public double? ZoneMm { get; init; }

    public double? StrengthPercent { get; init; }

    public string? Plan { get; init; }
}
