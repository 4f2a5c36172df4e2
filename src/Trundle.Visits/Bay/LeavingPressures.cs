using Trundle.Engine.Findings;
using Trundle.Engine.Pressure;
using Trundle.Engine.Reference;
using Trundle.Engine.Vehicles;
using Trundle.Measures;
using Trundle.Visits.Files;

namespace Trundle.Visits.Bay;

/// <summary>What stands of the pressures as the vehicle leaves, beside what a gauge would show: air alone puts no run-low tyre right, and no placard tells what another tyre needs.</summary>
internal static class LeavingPressures
{
    /// <summary>The findings that setting a pressure does not put right, or brings.</summary>
    /// <param name="file">The visit.</param>
    /// <param name="found">What was found when it came.</param>
    /// <param name="left">What stands already.</param>
    /// <param name="leaves">The vehicle as it leaves.</param>
    /// <param name="work">What was recorded.</param>
    public static IEnumerable<Finding> Of(VisitFile file, IReadOnlyList<Finding> found, IReadOnlyList<Finding> left, LeavingVehicle leaves, VisitWork work) =>
        NotLookedInto(found, left, leaves, work).Concat(SetTooLow(file, left, leaves, work)).ToList();

    /// <summary>A tyre that came in run low and was not taken off its wheel: with air in it, it looks like any other.</summary>
    private static IEnumerable<Finding> NotLookedInto(IReadOnlyList<Finding> found, IReadOnlyList<Finding> left, LeavingVehicle leaves, VisitWork work)
    {
        foreach (var finding in found.Where(f => FlatReading.RunLowRules.Contains(f.Rule) && f.Category > Category.None))
        {
            if (Position.Read(finding.Position) is not { IsRead: true } at || LeavingVehicle.TyreWasOff(at.Value, work))
            {
                continue;
            }

            var goesTo = leaves.Vehicle.Fitted.Select(a => a.Position).FirstOrDefault(p => leaves.From(p) == at.Value, at.Value).ToString();
            if (!left.Any(f => FlatReading.RunLowRules.Contains(f.Rule) && f.Category > Category.None && f.Position == goesTo))
            {
                yield return finding with { Position = goesTo, Measured = finding.Measured with { Text = $"{finding.Measured.Text}, as it came; not taken off its wheel" } };
            }
        }
    }

    /// <summary>
    /// A pressure that was set below what this tyre needs at this place: a tyre of another kind than the placard's, or a vehicle that will be laden.
    /// Below the placard's cold pressure it is found already.
    /// </summary>
    private static IEnumerable<Finding> SetTooLow(VisitFile file, IReadOnlyList<Finding> left, LeavingVehicle leaves, VisitWork work)
    {
        if (!work.Steps.Values.Any(s => s.ContainsKey("pressure-set")))
        {
            yield break;
        }

        var conditions = file.Conditions;
        var plan = PressurePlan.For(leaves.Vehicle, new PressureConditions(conditions.Ambient, conditions.Expected, conditions.AltitudeSet, conditions.AltitudeUsed, conditions.Laden, leaves.Vehicle.Rules));
        var near = Figures.Of("pressure.reading-resolution").As<GaugePressure>();
        foreach (var position in plan.Positions)
        {
            var at = position.Position.ToString();
            // Where it will run warmer, less may be set here: then it shows the cold pressure there.
            if (work.At(at, "pressure-set")?.Pressure is { } set && position.Cold is { Case: ColdPressureCase.Set, ByPlacard: { Pressure: { } least } asked }
                && set.Pascals < Math.Min(least.Pascals, position.SetHere?.Pressure.Pascals ?? double.MaxValue) - near.Pascals
                && !left.Any(f => f.Position == at && f.Category > Category.None && f.Rule.StartsWith("pressure.", StringComparison.Ordinal)))
            {
                yield return new Finding("pressure.set", Category.Refer, at, Amount.Of(set, "kPa", 0), new Limit(Amount.Of(least, "kPa", 0), asked.Source), asked.Source,
                    $"Set it to at least {least.Text("kPa", 0)}, cold ({asked.Name}), or decide by the vehicle's or the tyre's maker's own figure.");
            }
        }
    }
}
