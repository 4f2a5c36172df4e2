using Trundle.Engine.Findings;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Engine.Fixings;

/// <summary>The cautions that stand with a tightening plan: first what this wheel lacks, then what holds for every wheel.</summary>
internal static class FixingCautions
{
    public static IEnumerable<string> For(FixingQuestion question, ClampRange? clamp, Limit? proof)
    {
        var fixings = question.Fixings;
        if (fixings.Torque is null)
        {
            yield return "The vehicle maker's torque was not given. There is no torque to set until it is: look it up for this vehicle, never borrow one.";
        }

        if (fixings.Order.Count > 0)
        {
            yield return "The vehicle's maker gave an order of its own: use it.";
        }

        foreach (var caution in ClampCautions(question, clamp, proof))
        {
            yield return caution;
        }

        if (question.Adapter is { TurnAssumed: true })
        {
            yield return "The adapter's angle was not given: it is taken to stand straight on, in line with the wrench (0°). At any other angle the setting is another: give the angle.";
        }

        if (question.Adapter is { } adapter)
        {
            yield return adapter.Turn.Degrees > 90
                ? "The adapter is folded back: the wrench is set above the torque that the fixing gets. Hold the angle while you pull."
                : "Hold the adapter at its angle while you pull, with the hand on the middle of the grip: the setting is right for that only.";
        }

        if (question.Wrench is { WorstPercent: { } worst } wrench && fixings.Torque is { } wanted && wrench.IsOff(question.Adapter?.Setting(wanted) ?? wanted))
        {
            yield return $"This wrench was found {WrenchFindings.Signed(worst)} off: at its click the fixing gets from {wrench.LeastAt(wanted).Text("N·m", 1)} to {wrench.MostAt(wanted).Text("N·m", 1)}, and the clamp's band is widened by it. Do not use it: take another.";
        }

        if (fixings.SeatWorn)
        {
            yield return "A worn or galled seat rubs harder and settles: the low end of the clamp is counted with it, by figures from memory, and no torque makes up for it. Renew what is worn.";
        }

        if (fixings.LeftHandSide is { } side)
        {
            yield return $"The threads on the {(side == Side.Left ? "left" : "right")} side of this vehicle are left-hand: there they tighten anticlockwise and loosen clockwise.";
        }

        yield return fixings.LeftHand
            ? "Left-hand thread: it tightens anticlockwise and loosens clockwise."
            : "Look at the ends of studs and the heads of bolts before loosening: one marked L has a left-hand thread and loosens clockwise.";
        yield return "Start every fixing by hand, several turns. A power tool neither starts nor finishes it; the last stage is done with a calibrated torque wrench.";
        yield return "Hub face, wheel face, threads and seats are clean, flat and dry unless the vehicle's maker says otherwise; paint and rust between them settle and the clamp is lost.";
        yield return "The seat of the fixing is the seat of the wheel: cone, ball and flat are never mixed.";
        yield return "A wheel that was left half tightened starts again at the first stage.";
    }

    private static IEnumerable<string> ClampCautions(FixingQuestion question, ClampRange? clamp, Limit? proof)
    {
        var fixings = question.Fixings;
        if (fixings.Torque is not null && fixings.Thread is null)
        {
            yield return "The thread was not given, so no clamp can be told.";
        }

        if (proof is null)
        {
            yield return "Thread or property class is not known, so the clamp is not held against a proof load.";
        }

        if (clamp is null)
        {
            if (fixings.Condition == ThreadCondition.Oiled)
            {
                yield return $"Oil raises the clamp at the same torque. {OilRule}";
            }

            yield break;
        }

        if (clamp.Assumed.Count > 0)
        {
            var nominal = clamp.Nominal.Seat is { } seat ? $"{(clamp.Nominal.Condition == ThreadCondition.Dry ? "a dry" : "an oiled")} {Word(seat)} seat" : "a dry thread";
            yield return $"The {string.Join(" and the ", clamp.Assumed)} of the fixing {(clamp.Assumed.Count > 1 ? "were" : "was")} not given: low and high span all that can be, and the nominal clamp is that of {nominal}.";
        }

        if (question.NutFactor is null)
        {
            yield return "The radii of the seat are estimated from the thread, so the clamp is an estimate too.";
        }

        if (fixings.Condition == ThreadCondition.Oiled)
        {
            yield return Oil(question, clamp);
        }
        else if (fixings.Condition is null)
        {
            yield return "Whether the thread is oiled or dry is the maker's to say. Never oil a seat that is rated dry: the same torque then clamps far harder.";
        }
    }

    private const string OilRule = "Oil thread and seat only where the vehicle's maker says so; never oil a seat that is rated dry.";

    private static string Oil(FixingQuestion question, ClampRange clamp)
    {
        if (question.NutFactor is not null)
        {
            return $"Oil raises the clamp at the same torque. {OilRule}";
        }

        var f = question.Fixings;
        var dry = ClampRange.Of(f.Torque!.Value, f.Thread!, clamp.Nominal.Seat, ThreadCondition.Dry, new ClampDetail { Form = f.Form }).Nominal.Nominal;
        return $"Oil raises the clamp at the same torque, here from {dry.Text("kN", 1)} dry to {clamp.Nominal.Nominal.Text("kN", 1)} oiled. {OilRule}";
    }

    private static string Word(SeatShape seat) => seat switch
    {
        SeatShape.Cone => "60° cone",
        SeatShape.Ball => "ball",
        SeatShape.Flat => "flat",
    };
}
