using Trundle.Measures;

namespace Trundle.Engine.Fixings;

/// <summary>Where a tightening torque goes: how long an arm the clamp has in the pitch, in the thread's friction and in the seat's friction.</summary>
/// <param name="Pitch">P/2π: what stretches the stud. The only useful part.</param>
/// <param name="Thread">The friction of the thread.</param>
/// <param name="Seat">The friction of the seat.</param>
public sealed record TorqueShares(Length Pitch, Length Thread, Length Seat)
{
    /// <summary>The whole arm: torque per clamp.</summary>
    public Length Arm => Pitch + Thread + Seat;

    /// <summary>The nut factor K = arm / diameter.</summary>
    /// <source>definition of K: Shigley, Mechanical Engineering Design, 9th ed., eq. 8-27</source>
    public double NutFactor(Length diameter) => Arm / diameter;

    /// <summary>The clamp of a torque.</summary>
    /// <source>T = F × arm</source>
    public Force Clamp(Torque torque) => Force.FromNewtons(torque.NewtonMetres / Arm.Metres);

    /// <summary>The torque of a clamp.</summary>
    /// <source>T = F × arm</source>
    public Torque Torque(Force clamp) => Measures.Torque.FromNewtonMetres(clamp.Newtons * Arm.Metres);
}

/// <summary>What turns a torque into a clamp.</summary>
public static class NutFactor
{
    /// <summary>
    /// The long form: T = F·[P/2π + μ_t·d2/(2·cos 30°) + μ_b·r_b·wedge].
    /// </summary>
    /// <param name="thread">The thread; both metric and unified have flanks at 30°.</param>
    /// <param name="seat">The seat.</param>
    /// <param name="threadFriction">μ_t, a pure number, 0 and up.</param>
    /// <param name="seatFriction">μ_b, a pure number, 0 and up.</param>
    /// <source>Motosh, ISO 16047 and VDI 2230 (from memory; checked against the printed strength table)</source>
    public static TorqueShares LongForm(ThreadDesignation thread, SeatContact seat, double threadFriction, double seatFriction)
    {
        ArgumentNullException.ThrowIfNull(thread);
        ArgumentNullException.ThrowIfNull(seat);
        return new TorqueShares(
            thread.Pitch / (2 * Math.PI),
            thread.PitchDiameter() * (threadFriction / (2 * Math.Cos(Math.PI / 6))),
            seat.MeanRadius * (seatFriction * seat.Wedge));
    }

    /// <summary>
    /// The textbook's long form with the exact thread term and a bearing face 1.25 d wide:
    /// K = (d_m/2d)·(tan λ + f·sec α)/(1 − f·tan λ·sec α) + 0.625·f_c, with d_m the mean of d and d − 1.299038 P.
    /// </summary>
    /// <param name="thread">The thread.</param>
    /// <param name="threadFriction">f, a pure number.</param>
    /// <param name="collarFriction">f_c, a pure number.</param>
    /// <source>Shigley, Mechanical Engineering Design, 9th ed., eq. 8-26, p. 438</source>
    public static double TextbookForm(ThreadDesignation thread, double threadFriction, double collarFriction)
    {
        ArgumentNullException.ThrowIfNull(thread);
        var mean = (thread.Diameter + (thread.Diameter - (1.299038 * thread.Pitch))) / 2;
        var tanLead = thread.Pitch / (Math.PI * mean);
        var secFlank = 1 / Math.Cos(Math.PI / 6);
        return (mean / thread.Diameter / 2 * ((tanLead + (threadFriction * secFlank)) / (1 - (threadFriction * tanLead * secFlank)))) + (0.625 * collarFriction);
    }

    /// <summary>The clamp of a torque by the short form F = T/(K·d).</summary>
    /// <source>Shigley, Mechanical Engineering Design, 9th ed., eq. 8-27</source>
    public static Force Clamp(Torque torque, double nutFactor, Length diameter) =>
        Force.FromNewtons(torque.NewtonMetres / (nutFactor * diameter.Metres));

    /// <summary>The torque of a clamp by the short form T = K·d·F.</summary>
    /// <source>Shigley, Mechanical Engineering Design, 9th ed., eq. 8-27</source>
    public static Torque Torque(Force clamp, double nutFactor, Length diameter) =>
        Measures.Torque.FromNewtonMetres(clamp.Newtons * nutFactor * diameter.Metres);

    /// <summary>The nut factor that a measured clamp shows: K = T/(F·d).</summary>
    /// <source>Shigley, Mechanical Engineering Design, 9th ed., eq. 8-27</source>
    public static double Measured(Torque torque, Force clamp, Length diameter) =>
        torque.NewtonMetres / (clamp.Newtons * diameter.Metres);
}
