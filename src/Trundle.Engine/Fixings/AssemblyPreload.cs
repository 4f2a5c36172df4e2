using Trundle.Engine.Reference;
using Trundle.Measures;

namespace Trundle.Engine.Fixings;

/// <summary>
/// The clamp at which a bolt has used nine tenths of its yield in pull and twist together, and the torque that makes it.
/// For teaching: these are limits of bolt strength for flat heads and never a wheel's torque.
/// </summary>
public static class AssemblyPreload
{
    /// <summary>
    /// F_M = σ_M·A_s with σ_M = 0.9·R_p0.2 / √(1 + 3·[1.5·(d2/d0)·(P/(π·d2) + 1.155·μ)]²), d0 = (d2 + d3)/2; M_A by the long form with one μ.
    /// </summary>
    /// <param name="thread">The thread.</param>
    /// <param name="propertyClass">The bolt's class.</param>
    /// <param name="seat">The bearing face.</param>
    /// <param name="friction">μ in thread and seat, a pure number.</param>
    /// <returns>Clamp and torque; within 0.6 % of the printed table for the threads that are tested.</returns>
    /// <source>VDI 2230 (formula from memory, verified against the 2001 fine-thread table as reprinted)</source>
    public static (Force Clamp, Torque Torque) AtYieldShare(ThreadDesignation thread, PropertyClass propertyClass, SeatContact seat, double friction)
    {
        ArgumentNullException.ThrowIfNull(propertyClass);
        var d2 = thread.PitchDiameter();
        var d0 = (d2 + thread.MinorDiameter()) / 2;
        var twist = 1.5 * (d2 / d0) * ((thread.Pitch / (Math.PI * d2)) + (1.155 * friction));
        var stress = propertyClass.Yield(thread) * (Figures.Of("fixings.yield-share").Value / Math.Sqrt(1 + (3 * twist * twist)));
        var clamp = stress * thread.StressArea();
        return (clamp, NutFactor.LongForm(thread, seat, friction, friction).Torque(clamp));
    }
}
