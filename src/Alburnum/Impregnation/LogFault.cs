namespace Alburnum.Impregnation;

/// <summary>Why a piece cannot lie in a log as was said.</summary>
public abstract record LogFault
{
    private protected LogFault() { }
}

/// <summary>The log is too small.</summary>
/// <param name="LeastMm">Least diameter that would do, mm.</param>
public sealed record LogTooSmall(double LeastMm) : LogFault;

/// <summary>A side piece without the diameter of its log, which says how far out it lies.</summary>
public sealed record SideWithoutDiameter : LogFault;

/// <summary>A piece cannot lie in a log as was said.</summary>
/// <param name="fault">Why.</param>
public sealed class LogFaultException(LogFault fault) : Exception(fault?.ToString())
{
    /// <summary>Why.</summary>
    public LogFault Fault { get; } = fault!;
}
