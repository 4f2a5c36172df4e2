using System.Globalization;
using Trundle.Engine.Balance.Why;
using Trundle.Engine.Findings;
using Trundle.Measures;

namespace Trundle.Visits.Operations;

/// <summary>Why a wheel does not come to zero, in sentences.</summary>
internal static class BalanceWhyWords
{
    public static IEnumerable<string> Lines(WhyProblem problem, WhyOutcome outcome)
    {
        yield return Whole(outcome);
        var shown = 0;
        foreach (var e in outcome.Explanations)
        {
            if (shown > 0 && e.Probability < 0.01)
            {
                continue;
            }

            yield return $"{Percent(e.Probability),5}  {e.Cause.Word()}{(e.Estimate is { } size ? $": {size.Value.Text} ({size.Low.Text} to {size.High.Text})" : "")}";
            if (shown < 3)
            {
                yield return $"       {Evidence(problem, outcome, e)}";
            }

            if (shown == 0)
            {
                yield return $"       Next: {NextStep(problem, outcome, e)}";
            }

            shown++;
        }

        foreach (var caution in Cautions(problem, outcome))
        {
            yield return $"Caution: {caution}";
        }
    }

    /// <summary>What speaks for or against a cause.</summary>
    public static string Evidence(WhyProblem problem, WhyOutcome outcome, WhyExplanation e)
    {
        if (!outcome.CanTell)
        {
            return "One spin tells nothing of this yet: its probability is what is held likely beforehand.";
        }

        if (!outcome.WeightsSeen && e.Cause is not (WhyCause.Noise or WhyCause.LooseObject or WhyCause.ReSeated))
        {
            return "No weight was fitted between the spins, so that they tell nothing of this: only what is held likely beforehand, and whether the displays moved by themselves.";
        }

        if (double.IsNegativeInfinity(e.EvidenceLogRatio))
        {
            return "No weight was fitted.";
        }

        var what = What(problem, e);
        return e.Cause switch
        {
            WhyCause.Noise => $"{what} the displays miss what the weights should have done by {Grams(outcome.MisfitWithoutCause)} in each plane, up and across; repeatability leaves about {Grams(outcome.MisfitExpected)}.",
            WhyCause.LooseObject => $"{what} the displays are foretold {Better(e)}.",
            _ => $"{what} the displays are met within {Grams(e.Misfit)} (repeatability leaves about {Grams(outcome.MisfitExpected)}); without it they miss by {Grams(outcome.MisfitWithoutCause)}. They are foretold {Better(e)}.",
        };
    }

    /// <summary>What to do next.</summary>
    public static string NextStep(WhyProblem problem, WhyOutcome outcome, WhyExplanation e)
    {
        var setting = e.NextStep.Cause is { } cause
            ? outcome.Explanations.First(x => x.Cause == cause) is { Estimate: { } size }
                ? $" ({Entered(problem, cause)} is entered; {size.Value.Text} would explain the displays)"
                : $" ({Entered(problem, cause)} is entered)"
            : "";
        return e.NextStep.Key is "fit-and-spin" or "spin-after-fitting"
            ? $"{e.NextStep.Text}."
            : $"{e.NextStep.Text}{setting}. If {e.NextStep.Shows}, it is {For(e, true)}; if not, {For(e, false)}.";
    }

    public static IReadOnlyList<string> Cautions(WhyProblem problem, WhyOutcome outcome)
    {
        var cautions = new List<string>
        {
            "Guard down and eye protection at every spin; see that each weight holds before it turns.",
            "The causes are weighed as if one of them alone were at work.",
        };
        if (problem is { DisplayStepFrom: DisplayStepFrom.Values, Profile.DisplayStep: { } step })
        {
            cautions.Add($"The balancer's step was not told, and every mass shown is a whole multiple of {Step(step)}: the display is taken to round to that, up to {(step / 2).Text("g", 1)} off each way. Where it shows finer, say so with displayStep under 'balancer'.");
        }

        if (outcome.NothingFits)
        {
            cautions.Add("No single cause meets these displays: more than one thing is wrong, or something that is not weighed here. Take all weights off, enter the settings anew, and begin again.");
        }

        if (outcome.CanTell && outcome.FirstTwoAlike)
        {
            cautions.Add($"The displays do not part {outcome.Explanations[0].Cause.Word()} from {outcome.Explanations[1].Cause.Word()}: which comes first is what is held likely beforehand. Take the next step before changing anything.");
        }

        if (problem.Transducers is null)
        {
            cautions.Add("The places of the transducers are not given: one of them being off by itself is not weighed.");
        }

        return cautions;
    }

    private static string Whole(WhyOutcome outcome) =>
        !outcome.CanTell ? "One spin shows what the wheel needs, not why it does not come to zero."
        : !outcome.WeightsSeen ? "No weight was fitted between these spins: they tell only whether the display stays."
        : $"The displays miss what the fitted weights should have done by {Grams(outcome.MisfitWithoutCause)} in each plane, up and across; repeatability leaves about {Grams(outcome.MisfitExpected)}.";

    private static string What(WhyProblem problem, WhyExplanation e) => e.Cause switch
    {
        WhyCause.RimDistance or WhyCause.RimDiameter or WhyCause.RimWidth =>
            $"With a {Name(e.Cause)} of {e.Estimate?.Value.Text} instead of {Entered(problem, e.Cause)}",
        WhyCause.WeightAngle => $"With {Weights(e)} {Turned(e)}",
        WhyCause.WeightMass => $"With {e.Estimate?.Value.Text} in place of {Weights(e)}",
        WhyCause.WeightsSwapped => $"With {Weights(e)} on the other side, or their masses exchanged,",
        WhyCause.WeightPlace => $"With {Weights(e)} at the other kind's place (clip or adhesive) than entered",
        WhyCause.WeightLost => $"With {Weights(e)} gone{(e.Subject.AfterSpin is { } spin && e.Subject.Weights[0].AfterSpin < spin ? $" after spin {Number(spin)}" : "")}",
        WhyCause.ReSeated => e.Estimate is { } size
            ? $"With the wheel moved {(size.Value.Unit == "mm" ? $"{size.Value.Text} off centre" : $"off centre by {size.Value.Text} of static unbalance")} after spin {Number(e.Subject.AfterSpin ?? 1)}, heavy at {Quantity.Number(WheelAngle.FromDegrees(e.Direction?.Degrees ?? 0).Degrees, 0)}°,"
            : "With the wheel moved on its seat",
        WhyCause.LooseObject => "With something that lies elsewhere at each spin",
        WhyCause.Calibration => e.Estimate is { } gain
            ? $"With {(e.Subject.Transducer is { } t ? $"transducer {Number(t)}" : "the balancer")} showing {gain.Value.Text} of what is there, turned by {Quantity.Number(e.Direction?.Degrees ?? 0, 0)}°,"
            : "With the balancer off its calibration",
        WhyCause.Noise => "With nothing wrong",
    };

    private static string Name(WhyCause cause) => cause.Word().Replace('-', ' ');

    private static string Entered(WhyProblem problem, WhyCause cause) => cause switch
    {
        WhyCause.RimDistance => In(problem.Entered.RimDistance, problem.Units.Distance),
        WhyCause.RimDiameter => In(problem.Entered.RimDiameter, problem.Units.Diameter),
        WhyCause.RimWidth => In(problem.Entered.RimWidth, problem.Units.Width),
        _ => throw new ArgumentOutOfRangeException(nameof(cause)),
    };

    private static string In(Length length, string unit) => length.Text(unit, unit == "mm" ? 0 : 1);

    private static string Weights(WhyExplanation e) => e.Subject.Weights.Count switch
    {
        0 => "the weights",
        1 => $"the {BalanceWords.Word(e.Subject.Weights[0].Weight.Plane)} {e.Subject.Weights[0].Weight.Mass.Text("g", 0)} at {e.Subject.Weights[0].Weight.Place} (after spin {Number(e.Subject.Weights[0].AfterSpin)})",
        _ => e.Subject.Weights.Select(w => w.Weight.Plane).Distinct().Count() == 1
            ? $"the {Number(e.Subject.Weights.Count)} {BalanceWords.Word(e.Subject.Weights[0].Weight.Plane)} weights"
            : $"the {Number(e.Subject.Weights.Count)} weights of {(e.Subject.Weights.Select(w => w.AfterSpin).Distinct().Count() == 1 ? $"spin {Number(e.Subject.Weights[0].AfterSpin)}" : "all spins")}",
    };

    private static string Turned(WhyExplanation e) =>
        e.Estimate is { Value.Value: { } degrees } ? $"turned {Quantity.Number(Math.Abs(degrees), 0)}° {(degrees < 0 ? "anticlockwise" : "clockwise")} (seen from outside) of where they were meant" : "turned";

    /// <summary>How much better or worse than repeatability alone, in words.</summary>
    private static string Better(WhyExplanation e)
    {
        var log = e.EvidenceLogRatio;
        var by = Math.Abs(log) > 6 ? "more than a million times" : $"{Quantity.Number(Math.Pow(10, Math.Abs(log)), Math.Abs(log) < 1 ? 1 : 0)} times";
        return Math.Abs(log) < 0.05 ? "as well as by repeatability alone" : $"{by} {(log > 0 ? "better" : "worse")} than by repeatability alone";
    }

    private static string For(WhyExplanation e, bool shows)
    {
        // The step was chosen for a pair; which of the two it speaks for is told by the setting or part that it looks at.
        var (a, b) = (Name(e.Cause), Name(e.PartedFrom));
        var first = e.NextStepSpeaksForThis == shows;
        return first ? a : $"rather {b}";
    }

    private static string Percent(double p) => p is > 0 and < 0.005 ? "<1 %" : $"{Quantity.Number(100 * p, 0)} %";

    private static string Step(Mass step) => Math.Abs(Math.IEEERemainder(step.Ounces, 0.05)) < 1e-6 ? step.Text("oz", 2) : step.Text("g", 0);

    private static string Grams(Mass mass) => mass.Text("g", 1);

    private static string Number(int n) => n.ToString(CultureInfo.InvariantCulture);
}
