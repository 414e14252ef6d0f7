namespace Alburnum.Flow.Equations;

/// <summary>One time step: liquid and air held before it (m³, cell by cell), its length (s), and at its end the vessel and the warmth of each cell.</summary>
internal readonly record struct TimeStep(double[] Before, double Seconds, VesselBoundary Vessel, CellWarmth[] Warmth);
