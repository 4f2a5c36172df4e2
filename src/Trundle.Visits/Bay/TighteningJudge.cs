using System.Globalization;
using Trundle.Engine.Reference;
using Trundle.Measures;

namespace Trundle.Visits.Bay;

/// <summary>Holds the record of the stages at a wheel against what the step says of them: a word alone that all stages were done is not enough.</summary>
internal static class TighteningJudge
{
    private const string Again = "Slacken all, begin again at the first stage, and record each stage fixing by fixing.";

    /// <summary>
    /// Why the stages of a wheel do not stand as done, or null where they do: none recorded, a fixing missing from a stage, the last stage short of the whole
    /// torque, or a fixing that got too little at it. A right final torque does not make that good: it tells what the wrench felt, not that the wheel lies flat.
    /// </summary>
    public static (StepStanding Standing, string Why)? NotDone(StepLimits limits)
    {
        if (limits is not { Torque: { } maker, FixingCount: { } count })
        {
            return null;
        }

        if (limits.Tightening is not { Stages: { Count: > 0 } stages } tightening)
        {
            return (StepStanding.Open, "No stage of this wheel is recorded: go round in the order drawn, stage by stage, and record which fixings had each (work.tightening).");
        }

        for (var i = 0; i < stages.Count; i++)
        {
            if (Fixings(count, n => !stages[i].Fixings.Contains(n)) is { } missing)
            {
                return (StepStanding.Failed, string.Create(CultureInfo.InvariantCulture, $"Fixing {missing} is missing from stage {i + 1}{(i == stages.Count - 1 ? ", the last one" : "")}. {Again}"));
            }
        }

        if (stages[^1].Percent < 100 - 1e-6)
        {
            return (StepStanding.Failed, string.Create(CultureInfo.InvariantCulture, $"The last stage recorded is {stages[^1].Percent:0.###} % of the torque: take every fixing, in the order drawn, to the maker's {maker.Text("N·m", 0)} and record that stage too."));
        }

        var band = Figures.Of("fixings.wrench-tolerance");
        var last = tightening.Torques.Where(t => t.Stage >= stages.Count - 1).ToList();
        var low = last.SelectMany(s => s.Torques).Where(t => t.Key <= count && t.Value / maker < 1 - (band.Value / 100) - 1e-9).Select(t => $"{t.Key.ToString(CultureInfo.InvariantCulture)} ({t.Value.Text("N·m", 0)})").ToList();
        if (low.Count > 0)
        {
            return (StepStanding.Failed, $"Fixing {string.Join(", ", low)} got more than {Quantity.Number(band.Value, 0)} % less than the maker's {maker.Text("N·m", 0)} at the last stage ({band.Source.ForPeople}). {Again}");
        }

        return last.Count > 0 && Fixings(count, n => !last.Exists(s => s.Torques.ContainsKey(n))) is { } unrecorded
            ? (StepStanding.Open, $"The torque of fixing {unrecorded} at the last stage is not recorded beside the others: record it, or tighten it to the maker's {maker.Text("N·m", 0)} and record that.")
            : null;
    }

    private static string? Fixings(int count, Func<int, bool> which)
    {
        var found = Enumerable.Range(1, count).Where(which).Select(n => n.ToString(CultureInfo.InvariantCulture)).ToList();
        return found.Count == 0 ? null : string.Join(", ", found);
    }
}
