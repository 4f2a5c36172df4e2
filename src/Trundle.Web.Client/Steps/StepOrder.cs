using Trundle.Visits.Bay;

namespace Trundle.Web.Client.Steps;

/// <summary>
/// The order in which the steps of a leg are done: as the procedure has them, and at every wheel before the next step that is for the whole
/// vehicle. So every wheel is slackened before the vehicle is lifted, and it stands on its stands before anybody works at a wheel.
/// </summary>
public static class StepOrder
{
    /// <summary>The steps of a leg in the order in which they are done.</summary>
    public static IReadOnlyList<StepState> Of(LegState leg)
    {
        ArgumentNullException.ThrowIfNull(leg);
        var ordered = new List<StepState>();
        var run = new List<StepState>();
        foreach (var state in leg.Steps)
        {
            if (!state.Step.PerWheel)
            {
                Close();
                ordered.Add(state);
            }
            else
            {
                run.Add(state);
            }
        }

        Close();
        return ordered;

        // The procedure lists a step at every wheel; the hand finishes one wheel before the next.
        void Close()
        {
            ordered.AddRange(run.GroupBy(s => s.At).SelectMany(g => g));
            run.Clear();
        }
    }

    /// <summary>What is to be done next on a leg: a step that failed, else the first that is open.</summary>
    public static StepState? Next(LegState leg)
    {
        var order = Of(leg);
        return order.FirstOrDefault(s => s.Standing != StepStanding.Passed);
    }

    /// <summary>
    /// What comes after a step: the next that is not passed at the same wheel in the same run of steps, also one that was left behind; then the
    /// first that is not passed behind it; then the first at all. So a wheel is finished before the next is named.
    /// </summary>
    public static StepState? After(LegState leg, StepState? step)
    {
        var order = Of(leg).ToList();
        var at = step is null ? -1 : order.FindIndex(s => s.At == step.At && s.Step.Id == step.Step.Id);
        if (at >= 0 && step!.Step.PerWheel)
        {
            var wheel = order.Select((s, i) => (State: s, Index: i)).Where(s => s.State.At == step.At && s.Index != at && s.State.Standing != StepStanding.Passed).Select(s => (int?)s.Index).ToList();
            var next = wheel.FirstOrDefault(i => i > at && order.Skip(at).Take(i!.Value - at).All(s => s.Step.PerWheel)) ?? wheel.FirstOrDefault(i => i < at);
            if (next is { } here)
            {
                return order[here];
            }
        }

        return order.Skip(at + 1).Concat(order.Take(Math.Max(0, at))).FirstOrDefault(s => s.Standing != StepStanding.Passed);
    }
}
