using System.Globalization;
using Trundle.Engine.Findings;
using Trundle.Engine.Vehicles;
using Trundle.Measures;
using Trundle.Visits.Files;

namespace Trundle.Visits.Bay;

/// <summary>Tells how a visit stands, from its file alone.</summary>
public static class VisitStanding
{
    /// <summary>
    /// Reads a visit's file and tells how the visit stands. It works on whatever is there: an early visit is mostly needs.
    /// </summary>
    /// <param name="root">The file.</param>
    /// <param name="problems">Gathers what could not be read, each with its place.</param>
    public static VisitState Of(FileNode root, List<Problem> problems)
    {
        ArgumentNullException.ThrowIfNull(root);
        var file = VisitFileReader.Read(root, problems);
        return Of(file, VisitWorkReader.Read(file, problems));
    }

    /// <summary>How a visit of the workshop stands: by its fields, and by what the register of condemned tyres and wheels says of them.</summary>
    /// <param name="fields">The visit.</param>
    /// <param name="visit">Which visit it is.</param>
    /// <param name="register">The lines that stand, oldest first.</param>
    /// <param name="problems">Gathers what could not be read, each with the field that it stands in.</param>
    public static VisitState Of(VisitFields fields, Guid visit, IReadOnlyList<CondemnedLine> register, List<Problem> problems)
    {
        ArgumentNullException.ThrowIfNull(fields);
        ArgumentNullException.ThrowIfNull(problems);
        var assembled = fields.Assemble();
        var found = new List<Problem>();
        var file = VisitFileReader.Read(assembled.Root, found);
        var work = VisitWorkReader.Read(file, found);
        problems.AddRange(found.Select(p => p.At(assembled.FieldOf(p.Where))));
        return Of(file, work, CondemnedNames.Undecided(CondemnedNames.Hits(fields, visit, register), fields), []);
    }

    /// <summary>How a visit stands that was read already.</summary>
    public static VisitState Of(VisitFile file, VisitWork work) => Of(file, work, [], []);

    /// <summary>How a visit stands that was read already.</summary>
    /// <param name="file">The file.</param>
    /// <param name="work">What was recorded.</param>
    /// <param name="known">Findings that the file cannot tell: what the workshop's register says of its tyres, see <see cref="CondemnedHit.Undecided"/>.</param>
    /// <param name="before">What was judged when the visit was read last, <see cref="VisitState.Judged"/>: the same vehicle is not judged twice. The answer is the same without it.</param>
    public static VisitState Of(VisitFile file, VisitWork work, IReadOnlyList<Finding> known, IReadOnlyList<JudgedVehicle> before)
    {
        ArgumentNullException.ThrowIfNull(file);
        ArgumentNullException.ThrowIfNull(work);
        ArgumentNullException.ThrowIfNull(known);
        ArgumentNullException.ThrowIfNull(before);
        var judge = new VehicleJudge(before);
        var arrived = file.Subject;
        var leaves = LeavingVehicle.Of(arrived, work);
        var leaving = leaves.Vehicle;
        var needs = VisitNeeds.Of(arrived, work, known).Concat(work.Paper.Needs()).ToList();
        var seen = work.Paper.Seen.Select(s => s.Finding).ToList();
        var steps = VisitSteps.Of(file, leaves, work, judge);
        var leaks = Leaks(steps).ToList();
        IReadOnlyList<Finding> found = [.. Judged(judge, arrived), .. known];
        List<Finding> left = [.. Judged(judge, work.Jobs.Count == 0 && work.Steps.Count == 0 ? arrived : leaving), .. leaks, .. seen, .. InstrumentFindings.Of(work.Instruments, arrived.Date), .. known];
        left.AddRange(LeavingPressures.Of(file, found, left, leaves, work));

        Need[] handWork = VisitNeeds.OfHandWork(arrived, work) is { } plan ? [plan] : [];
        var legs = LegWords.All.Select(leg => new LegState(
            leg,
            [.. needs.Where(n => n.Leg == leg), .. leg is Leg.OffTheCar or Leg.Refit or Leg.Prove ? handWork : []],
            [.. steps.Where(s => s.Step.Leg == leg)],
            leg switch
            {
                Leg.LookOver => found,
                Leg.Prove => left,
                Leg.OffTheCar => [.. leaks, .. seen],
                Leg.Arrive or Leg.Plan or Leg.Refit or Leg.HandBack => [],
            })
        {
            Begun = Begun(leg, arrived, work, steps),
        }).ToList();

        var wheels = VisitSteps.OffWheels(arrived, leaves, work).ToList();
        var notTightened = wheels.Where(p => steps.Any(s => s.Step.Id == "final-torque" && s.At == p.ToString() && s.Standing != StepStanding.Passed)).ToList();
        var loose = notTightened.Where(p => HasBegun(p, leaves, work)).ToList();
        List<Stop> stops = [.. Refused(leaves), .. Stops(steps, left, needs, work)];
        return new VisitState(file, leaving, work, WithHandBack(legs, work, stops.Count), stops, notTightened, loose) { Judged = judge.Judged };
    }

    /// <summary>
    /// All that is found on a vehicle. With all wheels driven a spread of tread depths is told by the fitment and by the condition; on a visit it is
    /// one fact, and the condition says it with the tyres' names.
    /// </summary>
    private static IEnumerable<Finding> Judged(VehicleJudge judge, FittedVehicle vehicle) => judge.Of(vehicle) switch
    {
        var judged => judged.Fitment.Where(f => !(f.Rule.StartsWith("circumference.all-wheel-drive", StringComparison.Ordinal) && f.Measured.Unit == "mm")).Concat(judged.Condition),
    };

    private static IEnumerable<Finding> Leaks(IEnumerable<StepState> steps) =>
        steps.Where(s => s.Step.Id == "soap-test" && s.Standing == StepStanding.Failed)
            .Select(s => new Finding("leak", Category.Dangerous, s.At, Amount.Word("bubbles in the soap test"), null, Source.CommonPractice, s.Step.Stop!));

    private static IEnumerable<Stop> Refused(LeavingVehicle leaves)
    {
        if (leaves.Refused is { } why)
        {
            yield return new Stop(Leg.Plan, null, "The rotation that was chosen", why, null);
        }
    }

    private static IEnumerable<Stop> Stops(List<StepState> steps, IReadOnlyList<Finding> left, List<Need> needs, VisitWork work)
    {
        foreach (var step in steps.Where(s => s.Step.HoldPoint && s.Standing != StepStanding.Passed))
        {
            var position = step.At == "vehicle" ? null : step.At;
            if (step.Step.Id == "soap-test" && step.Standing == StepStanding.Failed)
            {
                // A leak is a finding, and only as such may it be let go.
                continue;
            }

            yield return new Stop(step.Step.Leg, position, step.Step.Title,
                step.Why ?? "it is a hold point, and nothing is recorded", null);
        }

        foreach (var finding in left)
        {
            if (VisitFindings.Stops(finding, work) is { } why)
            {
                yield return new Stop(Leg.Prove, finding.Position, FindingWords.Of(finding), why, VisitFindings.IsForGood(finding) ? null : VisitFindings.DecisionKey(finding));
            }
        }

        // A spare that nobody looked at is said as a need; it keeps no vehicle in the bay.
        // A decision that is missing stands above already, at its finding.
        foreach (var need in needs.Where(n => (n.Leg is Leg.LookOver or Leg.Plan or Leg.HandBack && (n.Parts.Count == 0 || n.Parts.Any(p => !p.Field.StartsWith("work.decisions.", StringComparison.Ordinal))) && n.Position != Position.Spare.ToString()) || n.Field.StartsWith("vehicle.axles.", StringComparison.Ordinal)))
        {
            yield return new Stop(need.Leg, need.Position, need.What, need.Why ?? "it is not entered", null);
        }
    }

    private static bool Begun(Leg leg, FittedVehicle arrived, VisitWork work, List<StepState> steps) => leg switch
    {
        Leg.Arrive => arrived.Vehicle.Name is not null,
        Leg.LookOver => arrived.Fitted.Count > 0,
        Leg.Plan => work.Rotation is not null || work.Jobs.Count > 0,
        Leg.OffTheCar or Leg.Refit or Leg.Prove => steps.Any(s => s.Step.Leg == leg && s.Record is not null),
        Leg.HandBack => work.HandedBackBy is not null,
    };

    private static bool HasBegun(Position position, LeavingVehicle leaves, VisitWork work) =>
        new[] { position, leaves.From(position) }
            .Any(p => work.Steps.TryGetValue(p.ToString(), out var steps)
                && steps.Keys.Any(id => work.Procedure.Step(id) is { Leg: Leg.OffTheCar or Leg.Refit } step && step.Id is not "covers-off"));

    private static List<LegState> WithHandBack(List<LegState> legs, VisitWork work, int stops) =>
        [.. legs.Select(l => l.Leg == Leg.HandBack && !VisitState.Signed(work)
            ? l with { Needs = [.. l.Needs, new Need(Leg.HandBack, null, "work.handBack.by", "Who hands it back", "a technician, an instructor or the owner signs")] }
            : l.Leg == Leg.HandBack && stops > 0
            ? l with { Needs = [.. l.Needs, new Need(Leg.HandBack, null, "work.handBack.by", "What stops hand-back", string.Create(CultureInfo.InvariantCulture, $"{stops} {(stops == 1 ? "stop" : "stops")}: a signature does not lift {(stops == 1 ? "it" : "them")}"))] }
            : l)];

    /// <summary>What a leg says of itself in one line: "3 of 4 wheels", "forward cross".</summary>
    public static string Line(VisitState state, Leg leg)
    {
        ArgumentNullException.ThrowIfNull(state);
        var on = state.On(leg);
        var wheels = VisitNeeds.Positions(state.Arrived).Count;
        return leg switch
        {
            Leg.Arrive => state.Arrived.Vehicle.Complaint ?? (on.Needs.Count == 0 ? "" : Count(on.Needs.Count, "thing") + " to enter"),
            Leg.LookOver => string.Create(CultureInfo.InvariantCulture, $"{wheels - on.Needs.Count} of {wheels} wheels"),
            Leg.Plan => state.Work.Rotation is { } rotation ? rotation == "none" ? "no rotation" : rotation : "",
            Leg.OffTheCar or Leg.Refit or Leg.Prove => on.Steps.Count == 0 ? "" : string.Create(CultureInfo.InvariantCulture, $"{on.Steps.Count(s => s.Standing == StepStanding.Passed)} of {on.Steps.Count} steps"),
            Leg.HandBack => state.HandedBack ? $"by {state.Work.HandedBackBy}" : state.Stops.Count == 0 ? "may leave" : Count(state.Stops.Count, "stop"),
        };

        static string Count(int n, string what) => string.Create(CultureInfo.InvariantCulture, $"{n} {what}{(n == 1 ? "" : "s")}");
    }
}
