using Trundle.Engine.Findings;
using Trundle.Engine.Reference;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Engine.Fixings;

/// <summary>The clamp that a torque gives on one kind of seat in one condition.</summary>
/// <param name="Seat">The seat, or null where a nut factor was given and the seat does not matter.</param>
/// <param name="Condition">Dry or oiled.</param>
/// <param name="NutFactor">K.</param>
/// <param name="Scatter">The uncertainty about the nominal clamp, as a share.</param>
/// <param name="Nominal">T/(K·d).</param>
public sealed record ClampCase(SeatShape? Seat, ThreadCondition Condition, double NutFactor, double Scatter, Force Nominal)
{
    /// <summary>The least clamp to reckon with.</summary>
    public Force Low => Nominal * (1 - Scatter);

    /// <summary>The greatest clamp to reckon with.</summary>
    public Force High => Nominal * (1 + Scatter);
}

/// <summary>What a torque may do to the clamp: one torque, many clamps.</summary>
/// <param name="Nominal">The case that the nominal clamp speaks of.</param>
/// <param name="Cases">Every case that is open: one where seat and condition are known.</param>
/// <param name="Assumed">What the nominal case had to assume: <c>seat</c>, <c>condition</c>; empty where both were given.</param>
public sealed record ClampRange(ClampCase Nominal, IReadOnlyList<ClampCase> Cases, IReadOnlyList<string> Assumed)
{
    /// <summary>The least clamp over all open cases.</summary>
    public Force Low => Cases.Min(c => c.Low);

    /// <summary>The greatest clamp over all open cases.</summary>
    public Force High => Cases.Max(c => c.High);

    /// <summary>Where the scatter comes from.</summary>
    public static Source Source => Figures.Of("fixings.scatter.dry").Source;

    /// <summary>
    /// The clamp of a torque. Without a nut factor K comes from the long form for this thread and seat at the friction of the condition.
    /// What was not given is not chosen: low and high span every seat and condition that is left open, and only the nominal value names the
    /// case that it speaks of (60° cone, dry).
    /// </summary>
    /// <param name="torque">At the fixing.</param>
    /// <param name="thread">The thread.</param>
    /// <param name="seat">The seat, or null where nobody gave it.</param>
    /// <param name="condition">Dry or oiled, or null where nobody gave it.</param>
    /// <param name="nutFactor">K where it is known, a pure number above 0.</param>
    /// <source>scatter: NASA-STD-5020 as restated in J. Failure Analysis and Prevention 2019, eqs 1-2; K: long form of ISO 16047 and VDI 2230</source>
    public static ClampRange Of(Torque torque, ThreadDesignation thread, SeatShape? seat, ThreadCondition? condition, double? nutFactor)
    {
        ArgumentNullException.ThrowIfNull(thread);
        SeatShape?[] seats = nutFactor is not null ? [seat] : seat is null ? [SeatShape.Cone, SeatShape.Ball, SeatShape.Flat] : [seat];
        ThreadCondition[] conditions = condition is { } known ? [known] : [ThreadCondition.Dry, ThreadCondition.Oiled];
        var cases = seats.SelectMany(s => conditions.Select(c => Case(torque, thread, s, c, nutFactor))).ToList();
        var assumed = new List<string>();
        if (seats.Length > 1)
        {
            assumed.Add("seat");
        }

        if (conditions.Length > 1)
        {
            assumed.Add("condition");
        }

        return new ClampRange(cases[0], cases, assumed);
    }

    /// <summary>The friction in thread and seat that a condition stands for.</summary>
    /// <source>Shigley, Mechanical Engineering Design, 9th ed., p. 438, for dry; common practice for oiled</source>
    public static double Friction(ThreadCondition condition) => Figures.Of(condition switch
    {
        ThreadCondition.Dry => "fixings.friction.dry",
        ThreadCondition.Oiled => "fixings.friction.oiled",
    }).Value;

    private static ClampCase Case(Torque torque, ThreadDesignation thread, SeatShape? seat, ThreadCondition condition, double? nutFactor)
    {
        var friction = Friction(condition);
        var scatter = Figures.Of(condition switch
        {
            ThreadCondition.Dry => "fixings.scatter.dry",
            ThreadCondition.Oiled => "fixings.scatter.oiled",
        }).Value;
        var k = nutFactor ?? NutFactor.LongForm(thread, SeatContact.Estimated(thread, seat!.Value), friction, friction).NutFactor(thread.Diameter);
        return new ClampCase(seat, condition, k, scatter, NutFactor.Clamp(torque, k, thread.Diameter));
    }
}
