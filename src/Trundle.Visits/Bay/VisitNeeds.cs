using System.Globalization;
using Trundle.Engine.Findings;
using Trundle.Engine.Mounting;
using Trundle.Engine.Vehicles;

namespace Trundle.Visits.Bay;

/// <summary>Something that a leg still needs.</summary>
/// <param name="Leg">On which leg it is entered.</param>
/// <param name="Position">At which wheel, or null for the vehicle.</param>
/// <param name="Field">The field that it goes into.</param>
/// <param name="What">What, in a few words.</param>
/// <param name="Why">Why, or null where it is plain.</param>
public sealed record Need(Leg Leg, string? Position, string Field, string What, string? Why)
{
    /// <summary>Each single thing where there are several at one wheel: its field and its name.</summary>
    public IReadOnlyList<(string Field, string What)> Parts { get; init; } = [];
}

/// <summary>Tells what must still be entered on the legs before any wheel comes off.</summary>
public static class VisitNeeds
{
    /// <summary>The positions that a vehicle has: every wheel of every axle, and the spare where the placard names one or one is entered.</summary>
    public static IReadOnlyList<Position> Positions(FittedVehicle subject)
    {
        ArgumentNullException.ThrowIfNull(subject);
        var positions = new List<Position>();
        for (var axle = 1; axle <= Math.Min(subject.Vehicle.Axles.Count, Position.MostAxles); axle++)
        {
            // A motorcycle's wheel stands on the side on which it was entered; on the left where it was not yet.
            if (subject.Vehicle.SingleTrack)
            {
                if (!subject.Fitted.Any(a => a.Position.Axle == axle))
                {
                    positions.Add(Position.On(axle, Side.Left));
                }

                continue;
            }

            foreach (var side in (Side[])[Side.Left, Side.Right])
            {
                if (subject.Vehicle.Axles[axle - 1].Dual)
                {
                    positions.Add(Position.On(axle, side, DualPlace.Inner));
                    positions.Add(Position.On(axle, side, DualPlace.Outer));
                }
                else
                {
                    positions.Add(Position.On(axle, side));
                }
            }
        }

        positions.AddRange(subject.Fitted.Select(a => a.Position).Where(p => !p.IsSpare && !positions.Contains(p)));
        if (subject.Vehicle.SingleTrack)
        {
            positions = [.. positions.OrderBy(p => p.Axle)];
        }

        if (subject.Vehicle.SparePlacard is not null || subject.At(Position.Spare) is not null)
        {
            positions.Add(Position.Spare);
        }

        return positions;
    }

    /// <summary>What the legs arrive, look over and plan still need.</summary>
    /// <param name="subject">The vehicle as it came.</param>
    /// <param name="work">What was recorded.</param>
    /// <param name="known">What is known of its tyres and wheels from elsewhere, see <see cref="VisitStanding.Of(Files.VisitFile, VisitWork, IReadOnlyList{Finding}, IReadOnlyList{JudgedVehicle})"/>.</param>
    public static IEnumerable<Need> Of(FittedVehicle subject, VisitWork work, IReadOnlyList<Finding> known)
    {
        ArgumentNullException.ThrowIfNull(subject);
        ArgumentNullException.ThrowIfNull(work);
        ArgumentNullException.ThrowIfNull(known);
        var undecided = known.Where(f => VisitFindings.Stops(f, work) is not null).ToList();
        return Arrive(subject).Concat(LookOver(subject, work, undecided)).Concat(Plan(subject, work));
    }

    private static IEnumerable<Need> Arrive(FittedVehicle subject)
    {
        var vehicle = subject.Vehicle;
        if (vehicle.Name is null)
        {
            yield return Vehicle("vehicle.name", "What the vehicle is", null);
        }

        // A trailer counts no distance of its own.
        if (vehicle.Odometer is null && !VehicleClasses.IsTrailer(vehicle.VehicleClass))
        {
            yield return Vehicle("vehicle.odometer", "Odometer", "re-torque, next rotation and wear are told from it");
        }

        if (subject.Rules is null)
        {
            yield return Vehicle("rules", "Whose rules", "tread and mixing are judged by the law of the place");
        }

        if (subject.Date is null)
        {
            yield return Vehicle("date", "Today's date", "ages are told from it");
        }

        if (vehicle.Axles.Count == 0)
        {
            yield return Vehicle("vehicle.axles.0.placard.size", "Axles with their placard", "everything is held against it");
        }

        for (var i = 0; i < vehicle.Axles.Count; i++)
        {
            var axle = vehicle.Axles[i];
            var at = string.Create(CultureInfo.InvariantCulture, $"vehicle.axles.{i}");
            var name = string.Create(CultureInfo.InvariantCulture, $"axle {i + 1}");
            if (axle.Placard?.Size is null)
            {
                yield return Vehicle($"{at}.placard.size", $"Placard tyre of {name}", "every fitted tyre is held against it");
            }

            if (axle.Placard?.Cold is null)
            {
                yield return Vehicle($"{at}.placard.cold", $"Placard pressure of {name}", "no pressure is given without it");
            }

            if (axle.Fixings?.Count is null)
            {
                yield return Vehicle($"{at}.fixings.count", $"How many fixings a wheel has on {name}", "each is tightened and recorded");
            }

            if (axle.Fixings?.Torque is null)
            {
                yield return Vehicle($"{at}.fixings.torque", $"The vehicle maker's torque for {name}", "there is no torque without the maker's figure");
            }
        }

        static Need Vehicle(string field, string what, string? why) => new(Leg.Arrive, null, field, what, why);
    }

    private static IEnumerable<Need> LookOver(FittedVehicle subject, VisitWork work, List<Finding> undecided)
    {
        foreach (var position in Positions(subject))
        {
            var assembly = subject.At(position);
            var at = $"fitted.{position}";
            var missing = new List<(string Field, string What)>();
            if (assembly?.Tyre?.Marking is null)
            {
                missing.Add(($"{at}.tyre.marking", "marking"));
            }

            if (!position.IsSpare && assembly?.Tread is not { Inner.Count: > 0, Centre.Count: > 0, Outer.Count: > 0 })
            {
                missing.Add(($"{at}.tread.inner.0", "depths"));
            }

            if (assembly?.Pressure is null)
            {
                missing.Add(($"{at}.pressure.value", "pressure"));
            }

            if (work.Jobs.GetValueOrDefault(position) == WheelJob.Demount && WheelKind.IsOfSeveralPieces(assembly?.Wheel, assembly?.Tyre, subject.Vehicle.VehicleClass) is null)
            {
                missing.Add(($"{at}.wheel.multiPiece", "whether the rim is of one piece"));
            }

            missing.AddRange(undecided.Where(f => f.Position == position.ToString()).Select(f => ($"work.decisions.{VisitFindings.DecisionKey(f)}.decision", "a decision on its TIN")));
            if (missing.Count > 0)
            {
                yield return new Need(Leg.LookOver, position.ToString(), missing[0].Field,
                    $"{Capital(subject.Vehicle.InWords(position))}: {string.Join(", ", missing.Select(m => m.What))}", null) { Parts = missing };
            }
        }
    }

    private static IEnumerable<Need> Plan(FittedVehicle subject, VisitWork work)
    {
        if (work.Rotation is null)
        {
            yield return new Need(Leg.Plan, null, "work.rotation", "Rotation: a pattern, or none", null);
        }

        foreach (var position in Positions(subject))
        {
            if (!position.IsSpare && !work.Jobs.ContainsKey(position))
            {
                yield return new Need(Leg.Plan, position.ToString(), $"work.jobs.{position}",
                    $"{Capital(subject.Vehicle.InWords(position))}: what is done to it", null);
            }
        }
    }

    /// <summary>
    /// What the hand work still needs of the plan: until it says of every wheel what is done to it, nobody knows what is due off the car, at the
    /// refit and before the road, so none of these legs is done. Null where the plan says it.
    /// </summary>
    public static Need? OfHandWork(FittedVehicle subject, VisitWork work)
    {
        ArgumentNullException.ThrowIfNull(subject);
        ArgumentNullException.ThrowIfNull(work);
        const string why = "until the plan says it, nobody knows what is due here";
        var wheels = Positions(subject).Where(p => !p.IsSpare).ToList();
        var open = wheels.Where(p => !work.Jobs.ContainsKey(p)).ToList();
        return wheels.Count == 0 ? new Need(Leg.Arrive, null, "vehicle.axles.0.placard.size", "Axles with their placard", why)
            : open.Count == 0 ? null
            : new Need(Leg.Plan, null, $"work.jobs.{open[0]}",
                open.Count == wheels.Count ? "What is done to each wheel" : $"What is done to {string.Join(", ", open.Select(subject.Vehicle.InWords))}", why);
    }

    private static string Capital(string text) => string.Concat(text[..1].ToUpperInvariant(), text.AsSpan(1));
}
