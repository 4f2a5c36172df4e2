using Trundle.Engine.Balance;
using Trundle.Engine.Findings;
using Trundle.Engine.InUse;
using Trundle.Engine.Pressure;
using Trundle.Engine.Vehicles;
using Trundle.Measures;
using Trundle.Visits.Files;
using Trundle.Visits.Procedures;

namespace Trundle.Visits.Bay;

/// <summary>Which steps are due at which wheel, what each is held against, and which earlier hold point each waits for.</summary>
internal static class VisitSteps
{
    /// <summary>Steps that are done at a wheel that nobody took off as well: they tell nothing of the job.</summary>
    private static readonly string[] AtAnyWheel = ["covers-off", "ran-low", "feel", "cap-on", "pressure-set"];

    /// <summary>Every step that is due, in the order of the procedure.</summary>
    public static List<StepState> Of(VisitFile file, LeavingVehicle leaves, VisitWork work, VehicleJudge judge)
    {
        var arrived = file.Subject;
        var positions = VisitNeeds.Positions(arrived);
        var onWheels = LeavingVehicle.WithRenewals(arrived, work);
        var mismatches = RimMismatches(judge.Of(onWheels));
        var kinds = positions.ToDictionary(p => p, p => KindAt(arrived, onWheels, p, work, file.Balance.GetValueOrDefault(p)));
        var jobs = positions.ToDictionary(p => p, p => JobAt(p, leaves, work, kinds[p]));
        var ofVehicle = Circumstances.AtAny(jobs.Where(j => j.Value > WheelJob.StaysOn).Select(j => kinds[j.Key]));
        var anyOff = jobs.Values.Any(job => job > WheelJob.StaysOn);
        var toSet = ToSet(positions, judge.Of(arrived), leaves, work);
        var states = new List<StepState>();
        var runLow = RunLow(judge.Of(arrived));

        // What a wheel's steps are held against is told once for each wheel, and its balance only where a step asks for it.
        var off = positions.ToDictionary(p => p, p => LimitsAt(onWheels, p) with
        {
            RimMismatch = mismatches.GetValueOrDefault(p.ToString()),
            Repair = work.Repairs.TryGetValue(p, out var repair) && onWheels.At(p) is { } repaired ? RepairJudge.Of(onWheels, repaired, repair, work) : null,
            Licensed = work.Licensed.GetValueOrDefault(p),
            RanLow = kinds[p].Does(Circumstance.Truck) ? runLow.GetValueOrDefault(p.ToString()) : null,
            PiecesNotKnown = kinds[p][Circumstance.MultiPiece] is null,
        });
        var on = positions.ToDictionary(p => p, p => LimitsAt(leaves.Vehicle, p) with
        {
            Tightening = work.Tightening.GetValueOrDefault(p),
            RanLow = runLow.GetValueOrDefault(leaves.From(p).ToString()),
            OfSeveralPieces = kinds.TryGetValue(leaves.From(p), out var kind) && kind.Does(Circumstance.MultiPiece),
            Licensed = work.Licensed.GetValueOrDefault(leaves.From(p)),
        });
        foreach (var step in work.Procedure.Steps)
        {
            if (!step.PerWheel)
            {
                // Nothing is lifted where no wheel comes off.
                if (anyOff && step.Where(ofVehicle) is { } once)
                {
                    states.Add(TraineeJudge.Judge(StepJudge.Judge(once, "vehicle", work.At("vehicle", step.Id), StepLimits.None), work));
                }

                continue;
            }

            // Off the car a wheel is named by where it came from; from the refit on, by where it goes.
            var onVehicle = step.Leg >= Leg.Refit;
            foreach (var position in positions)
            {
                var from = onVehicle ? leaves.From(position) : position;
                var kind = kinds.TryGetValue(from, out var known) ? known : KindAt(arrived, onWheels, from, work, null);
                var due = (jobs.TryGetValue(from, out var job) ? job : JobAt(from, leaves, work, kind)) >= step.Job && !(onVehicle && position.IsSpare);
                if ((!due && !(step.Id == "pressure-set" && toSet.Contains(position)))
                    || step.Where(kind) is not { } here || DoneElsewhere(step, kind, work.Licensed.GetValueOrDefault(from)))
                {
                    continue;
                }

                var record = work.At(position.ToString(), step.Id);
                var limits = onVehicle ? on[position]
                    : step.Entry == StepEntry.Spin && record is not null ? off[position] with { Balance = BalanceAt(file, onWheels, position) }
                    : off[position];
                states.Add(TraineeJudge.Judge(StepJudge.Judge(here, position.ToString(), record, limits), work));
            }
        }

        return Held(states);
    }

    /// <summary>
    /// Where a pressure is set although nobody takes the wheel off: it was found low or high, the spare's too, or it is recorded. Nothing is due
    /// before the plan says what is done to the wheels.
    /// </summary>
    private static HashSet<Position> ToSet(IReadOnlyList<Position> positions, JudgedVehicle arrived, LeavingVehicle leaves, VisitWork work)
    {
        var wrong = arrived.Condition.Where(f => f.Category > Category.None && f.Rule.StartsWith("pressure.", StringComparison.Ordinal)).Select(f => f.Position).ToHashSet();
        return [.. positions.Where(p => work.At(p.ToString(), "pressure-set") is not null || (work.Jobs.Count > 0 && wrong.Contains(leaves.From(p).ToString())))];
    }

    /// <summary>The positions whose wheel comes off, named by where the assembly stands on the legs after the plan.</summary>
    public static IEnumerable<Position> OffWheels(FittedVehicle arrived, LeavingVehicle leaves, VisitWork work) =>
        VisitNeeds.Positions(arrived).Where(p => !p.IsSpare && JobAt(leaves.From(p), leaves, work, Circumstances.Ordinary) > WheelJob.StaysOn);

    /// <summary>
    /// What is so at the wheel that came in at a position. Where another wheel takes its place, the old rim is still the one that the tyre is taken
    /// off: of several pieces, or not looked at, it stops the work as before.
    /// </summary>
    private static Circumstances KindAt(FittedVehicle arrived, FittedVehicle onWheels, Position position, VisitWork work, FileNode? balance)
    {
        var kind = WheelCircumstances.At(onWheels, position, work, balance);
        return work.RenewedWheels.ContainsKey(position)
            ? kind.With(Circumstance.MultiPiece, Circumstances.AtAny([kind, WheelCircumstances.At(arrived, position, work, null)])[Circumstance.MultiPiece])
            : kind;
    }

    /// <summary>A rim of several pieces that a licensed shop did: what is done with the tyre is not due here any more.</summary>
    private static bool DoneElsewhere(ProcedureStep step, Circumstances kind, LicensedWork? licensed) =>
        step is { Job: WheelJob.Demount, Entry: not StepEntry.Nothing } && kind.Does(Circumstance.MultiPiece) && licensed is { Whole: true };

    /// <summary>
    /// The job at the wheel that came in at a position: as entered, at least off and on where a rotation moves it, and at least what was begun
    /// on it. Nobody takes a wheel's final torque away by writing that it stays on.
    /// </summary>
    private static WheelJob JobAt(Position arrivedAt, LeavingVehicle leaves, VisitWork work, Circumstances kind)
    {
        var job = work.Jobs.GetValueOrDefault(arrivedAt, WheelJob.StaysOn);
        if (work.Repairs.ContainsKey(arrivedAt) || work.RenewedWheels.ContainsKey(arrivedAt) || work.RenewedValves.ContainsKey(arrivedAt) || (kind.May(Circumstance.MultiPiece) && work.Renewed.ContainsKey(arrivedAt)))
        {
            // None of these is done with the tyre on its rim.
            job = WheelJob.Demount;
        }

        if (job == WheelJob.StaysOn && leaves.CameFrom.Values.Contains(arrivedAt))
        {
            job = WheelJob.OffAndOn;
        }

        var goesTo = leaves.CameFrom.FirstOrDefault(m => m.Value == arrivedAt) is { Key: var to } && leaves.CameFrom.Count > 0 && leaves.CameFrom.Values.Contains(arrivedAt) ? to : arrivedAt;
        return new[] { job, Begun(arrivedAt, work, s => s.Leg < Leg.Refit), Begun(goesTo, work, s => s.Leg >= Leg.Refit) }.Max();
    }

    private static WheelJob Begun(Position position, VisitWork work, Func<ProcedureStep, bool> on) =>
        work.Steps.TryGetValue(position.ToString(), out var recorded)
            ? recorded.Keys.Select(work.Procedure.Step).Where(s => on(s) && !AtAnyWheel.Contains(s.Id)).Select(s => s.Job).DefaultIfEmpty(WheelJob.StaysOn).Max()
            : WheelJob.StaysOn;

    private static StepLimits LimitsAt(FittedVehicle vehicle, Position position)
    {
        var assembly = vehicle.At(position);
        var fixings = vehicle.Vehicle.AxleAt(position)?.Fixings;
        var ruling = SeatingCeiling.For(assembly?.Tyre, assembly?.Wheel).Ruling;
        return new StepLimits(fixings?.Count, fixings?.Torque, new Limit(Amount.Of(ruling.Pressure, "kPa", 0), ruling.Source), null)
        {
            PressureCeiling = PressureCeiling(vehicle, position),
        };
    }

    /// <summary>Why a tyre counts as run low by the pressure that was found, by the wheel's position; what the condition check says.</summary>
    private static Dictionary<string, string> RunLow(JudgedVehicle judged) =>
        judged.Condition
            .Where(f => FlatReading.RunLowRules.Contains(f.Rule) && f is { Category: > Category.Minor, Position: not null })
            .GroupBy(f => f.Position!, StringComparer.Ordinal)
            .ToDictionary(g => g.Key, g => $"{g.First().Measured.Text} was found: it counts as run low ({(g.First().Limit?.Source ?? g.First().Source).ForPeople}).", StringComparer.Ordinal);

    /// <summary>The lowest of what the tyre, the wheel and any tyre of that class may hold, where one is known.</summary>
    private static Limit? PressureCeiling(FittedVehicle vehicle, Position position)
    {
        var assembly = vehicle.At(position);
        var ofClass = vehicle.InForce.LimitOrNone("pressure.above-class", new RulePoint(vehicle, position));
        return new[]
            {
                assembly?.Tyre?.MaximumPressure is { } tyre ? new Limit(Amount.Of(tyre, "kPa", 0), Source.Entered("maximum pressure on the sidewall, as entered")) : null,
                assembly?.Wheel?.MaximumPressure is { } wheel ? new Limit(Amount.Of(wheel, "kPa", 0), Source.Entered("the wheel's greatest pressure, as entered")) : null,
                ofClass is null ? null : new Limit(Amount.Of(GaugePressure.FromKilopascals(ofClass.Compared), "kPa", 0), ofClass.Source),
            }
            .OfType<Limit>().MinBy(l => l.Amount.Value);
    }

    /// <summary>Wheels whose rim is of another diameter than the tyre's marking.</summary>
    private static Dictionary<string, string> RimMismatches(JudgedVehicle judged) =>
        judged.Fitment
            .Where(f => f is { Rule: "rim.diameter", Category: Category.Dangerous, Position: not null })
            .ToDictionary(f => f.Position!, f => $"The rim is {f.Measured.Text}, the tyre is made for {f.Limit?.Amount.Text}.");

    /// <summary>What was entered for balancing the wheel that came in at a position, or null where it is not whole yet.</summary>
    private static BalanceProblem? BalanceAt(VisitFile file, FittedVehicle onWheels, Position position) =>
        file.Balance.TryGetValue(position, out var node) ? BalanceFileReader.Read(node, onWheels.At(position), [])?.Problem : null;

    /// <summary>Each step with the first hold point before it that is not passed.</summary>
    private static List<StepState> Held(List<StepState> states)
    {
        var held = new List<StepState>(states.Count);
        foreach (var state in states)
        {
            held.Add(state with { HeldBy = held.FirstOrDefault(h => h.Step.HoldPoint && h.Standing != StepStanding.Passed && Holds(h, state)) });
        }

        return held;
    }

    /// <summary>At a wheel: its own hold points and the vehicle's. At the vehicle, such as the road test: those of every wheel.</summary>
    private static bool Holds(StepState earlier, StepState later)
    {
        // From the refit on a wheel is named by where it goes, so its hold points carry over from leg to leg.
        var sameRun = earlier.Step.Leg == later.Step.Leg || (earlier.Step.Leg >= Leg.Refit && later.Step.Leg >= Leg.Refit);
        return sameRun && earlier.Step.Id != later.Step.Id && (later.At == "vehicle" || earlier.At == "vehicle" || earlier.At == later.At);
    }
}
