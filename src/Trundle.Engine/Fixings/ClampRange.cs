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
    /// <summary>What is left of the nominal clamp at the low end before the scatter: a wrench that shows too much, a worn seat.</summary>
    public double LowShare { get; init; } = 1;

    /// <summary>What the nominal clamp grows to at the high end before the scatter: a wrench that shows too little.</summary>
    public double HighShare { get; init; } = 1;

    /// <summary>The least clamp to reckon with.</summary>
    public Force Low => Nominal * (LowShare * (1 - Scatter));

    /// <summary>The greatest clamp to reckon with.</summary>
    public Force High => Nominal * (HighShare * (1 + Scatter));
}

/// <summary>What is known beyond torque, thread, seat and condition.</summary>
public sealed record ClampDetail
{
    /// <summary>Nothing more.</summary>
    public static ClampDetail None { get; } = new();

    /// <summary>K where it is known, a pure number above 0.</summary>
    public double? NutFactor { get; init; }

    /// <summary>The seat's form where it is known.</summary>
    public SeatForm? Form { get; init; }

    /// <summary>The seat is worn, galled or pulled in.</summary>
    public bool WornSeat { get; init; }

    /// <summary>The wrench that the torque is set with, or null.</summary>
    public TorqueWrench? Wrench { get; init; }

    /// <summary>What is set on it, where an adapter makes it another than the torque.</summary>
    public Torque? Setting { get; init; }
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
    public static ClampRange Of(Torque torque, ThreadDesignation thread, SeatShape? seat, ThreadCondition? condition, double? nutFactor) =>
        Of(torque, thread, seat, condition, new ClampDetail { NutFactor = nutFactor });

    /// <summary>
    /// The same with all that is known. A wrench whose last check found it farther off than a hand torque wrench may be widens the band by what was
    /// found; one within that is in the scatter already. A worn seat lowers the low end alone: its friction is taken as that of a galled face, and
    /// a share of the clamp as lost by settling. Nobody can say that it raises anything.
    /// </summary>
    /// <param name="torque">At the fixing.</param>
    /// <param name="thread">The thread.</param>
    /// <param name="seat">The seat, or null where nobody gave it.</param>
    /// <param name="condition">Dry or oiled, or null where nobody gave it.</param>
    /// <param name="detail">What else is known.</param>
    /// <source>scatter: NASA-STD-5020 as restated in J. Failure Analysis and Prevention 2019, eqs 1-2; K: long form of ISO 16047 and VDI 2230; worn seat: common practice (from memory)</source>
    public static ClampRange Of(Torque torque, ThreadDesignation thread, SeatShape? seat, ThreadCondition? condition, ClampDetail detail)
    {
        ArgumentNullException.ThrowIfNull(thread);
        ArgumentNullException.ThrowIfNull(detail);
        var nutFactor = detail.NutFactor;
        SeatShape?[] seats = nutFactor is not null ? [seat] : seat is null ? [SeatShape.Cone, SeatShape.Ball, SeatShape.Flat] : [seat];
        ThreadCondition[] conditions = condition is { } known ? [known] : [ThreadCondition.Dry, ThreadCondition.Oiled];
        var cases = seats.SelectMany(s => conditions.Select(c => Case(torque, thread, s, c, detail))).ToList();
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

    private static ClampCase Case(Torque torque, ThreadDesignation thread, SeatShape? seat, ThreadCondition condition, ClampDetail detail)
    {
        var friction = Friction(condition);
        var scatter = Figures.Of(condition switch
        {
            ThreadCondition.Dry => "fixings.scatter.dry",
            ThreadCondition.Oiled => "fixings.scatter.oiled",
        }).Value;
        var k = detail.NutFactor ?? K(friction);
        var off = detail.Wrench is { } wrench && wrench.IsOff(detail.Setting ?? torque) ? wrench : null;
        return new ClampCase(seat, condition, k, scatter, NutFactor.Clamp(torque, k, thread.Diameter))
        {
            LowShare = (off is null ? 1 : off.LeastAt(torque) / torque) * Worn(),
            HighShare = off is null ? 1 : off.MostAt(torque) / torque,
        };

        double K(double seatFriction) => NutFactor.LongForm(thread, SeatContact.Estimated(thread, seat!.Value, detail.Form), friction, seatFriction).NutFactor(thread.Diameter);

        double Worn()
        {
            if (!detail.WornSeat)
            {
                return 1;
            }

            // Where K was given, the seat's own part of it is not known; only the settling is.
            var rubbed = detail.NutFactor is null ? K(friction) / K(Math.Max(friction, Figures.Of("fixings.worn-seat.friction").Value)) : 1;
            return rubbed * (1 - Figures.Of("fixings.worn-seat.settling").Value);
        }
    }
}
