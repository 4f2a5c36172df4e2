using Trundle.Engine.Pressure;
using Trundle.Engine.Vehicles;
using Trundle.Measures;
using Trundle.Visits.Bay;
using Trundle.Visits.Files;

namespace Trundle.Visits.Operations;

/// <summary>A turn of a tyre on its wheel, or of a wheel on its hub, as a technician carries it out with the valve as mark.</summary>
internal static class MatchWords
{
    // Nobody sets a tyre on its rim closer than this.
    private const double LeastTurnDegrees = 1;

    /// <summary>The tyre stays on its wheel and is turned on it.</summary>
    /// <param name="turn">From how it stands, clockwise as seen from outside, 0 ≤ turn &lt; 360°.</param>
    /// <param name="tyre">The tyre, or null.</param>
    /// <param name="wheel">The wheel, or null.</param>
    public static IReadOnlyList<string> Turn(Angle turn, FittedTyre? tyre, Wheel? wheel) => IsNone(turn)
        ? ["Leave the tyre as it stands: no turn leaves less."]
        :
        [
            "Mark the tyre at the valve, on the outer sidewall.",
            .. BeadsFree(),
            $"Turn the tyre on the wheel {Sense(turn)} as seen from outside: with the valve at twelve the mark then stands at {Clock(turn)}.",
            .. Finish(tyre, wheel),
        ];

    /// <summary>The tyre goes on another wheel, or a loose one on this.</summary>
    /// <param name="tyreName">The tyre.</param>
    /// <param name="from">The wheel that it sits on now, or null where it lies loose.</param>
    /// <param name="to">The wheel that it goes on.</param>
    /// <param name="turn">From mark at valve; null where places were not measured.</param>
    /// <param name="tyre">The tyre, or null.</param>
    /// <param name="wheel">The wheel, or null.</param>
    public static IReadOnlyList<string> Change(string tyreName, string? from, string to, Angle? turn, FittedTyre? tyre, Wheel? wheel)
    {
        var steps = new List<string>();
        if (from is not null)
        {
            if (turn is not null)
            {
                steps.Add($"Mark tyre {tyreName} at the valve of wheel {from}, on the outer sidewall.");
            }

            steps.AddRange(BeadsFree());
            steps.Add($"Only then take tyre {tyreName} off wheel {from}, fingers clear of the gap that closes.");
        }
        else if (turn is not null)
        {
            steps.Add($"Tyre {tyreName} keeps the mark from which its angles were measured.");
        }

        steps.Add(turn is { } t
            ? $"Mount it on wheel {to} with the same side outwards, so that with the valve at twelve the mark stands at {Clock(t)}{(IsNone(t) ? ", at the valve" : $": {Sense(t)} from the valve as seen from outside")}."
            : $"Mount it on wheel {to} with the high point of the tyre at the low point of the wheel: their places were not measured, so find and mark both first.");
        steps.AddRange(Finish(tyre, wheel));
        return steps;
    }

    /// <summary>The wheel is moved on its hub by whole studs.</summary>
    public static IReadOnlyList<string> OnHub(string assembly, string hub, Angle turn, int studs)
    {
        var places = (int)Math.Round(turn.Degrees * studs / 360);
        return places == 0
            ? [$"Leave {assembly} on {hub} as it stands: no other place leaves less."]
            :
            [
                $"Mark the stud of {hub} that stands at the valve of {assembly}.",
                "On stands or locks that hold, take the wheel off; clean both faces.",
                $"Put it back with the valve {Quantity.Number(places, 0)} stud {(places == 1 ? "place" : "places")} ({Quantity.Number(turn.Degrees, 0)}°) clockwise from the marked stud, as seen from outside.",
                "Tighten in sequence and stages to the maker's torque, with the wheel on the ground for the last; then measure again.",
            ];
    }

    /// <summary>The cautions of turning or changing a tyre.</summary>
    public static IReadOnlyList<string> Cautions(FittedTyre? tyre, Wheel? wheel)
    {
        var cautions = new List<string>(SeatingCeiling.For(tyre, wheel).Cautions);
        cautions.AddRange(new[] { "core-out", "bead-breaking", "mount" }.SelectMany(id => Procedure.BuiltIn.Step(id).Cautions).Where(c => c.When.Count == 0).Select(c => c.Text));
        if (tyre is { Directional: true } or { Asymmetric: true })
        {
            cautions.Add("This tyre has a direction or an outside: the same side stays outwards, and the arrow still points forwards on the side of the vehicle that it goes to.");
        }

        return cautions;
    }

    /// <summary>A turn in the shorter sense.</summary>
    public static string Sense(Angle turn)
    {
        var degrees = turn.Degrees;
        return Math.Abs(degrees - 180) < 0.5 ? "half a turn (180°)"
            : degrees < 180 ? $"{Quantity.Number(degrees, 0)}° clockwise"
            : $"{Quantity.Number(360 - degrees, 0)}° anticlockwise";
    }

    /// <summary>Where the mark stands on the clock, to five minutes, with the valve at twelve.</summary>
    public static string Clock(Angle turn) => ClockFace.ValveAt(WheelAngle.FromDegrees(-turn.Degrees));

    /// <summary>True where the turn is none that a hand could make.</summary>
    public static bool IsNone(Angle turn) => turn.Degrees < LeastTurnDegrees || turn.Degrees > 360 - LeastTurnDegrees;

    /// <summary>Down to two loose beads: no bead is broken, and no tyre comes off, before these stand done.</summary>
    private static string[] BeadsFree() =>
    [
        "Take the valve core out, face, hands and other people out of its line, and wait until no more air comes: all air out and the core out before a bead is broken.",
        "Break both beads down, hands and feet clear of the blade, and lubricate both beads and the flanges.",
    ];

    private static string[] Finish(FittedTyre? tyre, Wheel? wheel)
    {
        var ruling = SeatingCeiling.For(tyre, wheel).Ruling;
        return
        [
            $"Core still out, clamps open, guard or cage shut where there is one, clip-on chuck and a hose long enough: inflate standing clear, never above {ruling.Pressure.Text("kPa", 0)} until both beads are home [{ruling.Source.ForPeople}]; of several limits the lowest holds. Then look at the moulded line all round on both sides.",
            "Core in, pressure set, then measure again; take the old weights off and balance anew.",
        ];
    }
}
