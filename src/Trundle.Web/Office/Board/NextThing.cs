using System.Globalization;
using Trundle.Engine.Findings;
using Trundle.Store;
using Trundle.Visits.Bay;
using Trundle.Web.Client.Frame;

namespace Trundle.Web.Office.Board;

/// <summary>The first thing that a vehicle in the workshop waits for.</summary>
/// <param name="What">What, in words.</param>
/// <param name="More">How many more there are on the leg.</param>
/// <param name="Address">Where it is done.</param>
/// <param name="Needs">The right that whoever does it needs.</param>
public sealed record NextThing(string What, int More, string Address, Right Needs)
{
    /// <summary>What it waits for, and how many more there are.</summary>
    public string Words => More == 0 ? What : string.Create(CultureInfo.InvariantCulture, $"{What}, and {More} more");

    /// <summary>The next thing of a visit: a step that failed first, then at the wheel that was begun, then in the order of the work.</summary>
    /// <param name="visit">The visit.</param>
    /// <param name="state">How it stands.</param>
    /// <param name="hand">Who entered last at the vehicle, or null.</param>
    public static NextThing Of(Guid visit, VisitState state, Entry? hand)
    {
        ArgumentNullException.ThrowIfNull(state);
        var leg = state.On(state.Current);
        var begun = leg.Steps.Where(s => s.Record is not null).Select(s => s.At).ToHashSet();
        var open = leg.Steps.Where(s => s.Standing != StepStanding.Passed).OrderBy(s => s.Standing == StepStanding.Failed ? 0 : begun.Contains(s.At) && s.At != "vehicle" ? 1 : 2).ToList();
        if (leg.Needs.Count > 0 && state.Current != Leg.HandBack)
        {
            var need = leg.Needs[0];
            return new NextThing(need.What, leg.Needs.Count + open.Count - 1, Places.OfField(visit, need.Leg, need.Position, need.Field), Right.Enter);
        }

        if (open.Count > 0)
        {
            return new NextThing(Step(state, open[0]), open.Count - 1, Places.Of(visit, open[0].Step.Leg, open[0].At, open[0].Step.Id), NeedsOf(state, open[0], hand));
        }

        if (state.Stops.Count > 0)
        {
            var stop = state.Stops[0];
            return new NextThing($"{stop.What}: {stop.Why}", state.Stops.Count - 1, Places.Of(visit, Leg.HandBack), stop.DecisionKey is { } key ? DecisionOn(state, key) : Right.Enter);
        }

        return new NextThing("somebody to hand it back", 0, Places.Of(visit, Leg.HandBack), Right.HandBack);
    }

    /// <summary>A trainee's hazardous step waits for an instructor: before it for the permission, after it for a look.</summary>
    private static Right NeedsOf(VisitState state, StepState step, Entry? hand)
    {
        if (step.Standing == StepStanding.Failed && state.Work.TraineeAt(step.At, step.Step.Id) is not null)
        {
            return Right.PermitTrainee;
        }

        return step is { Record: null, Step.Act: { } act } && hand is { Role: Role.Trainee } && TraineeJudge.WhyNot(state.Work, act, hand.By) is not null ? Right.PermitTrainee : Right.Enter;
    }

    private static Right DecisionOn(VisitState state, string key) =>
        state.LeavingFindings.Where(f => VisitFindings.DecisionKey(f) == key).Any(f => f.Category == Category.Dangerous || VisitFindings.IsForbidden(f)) ? Right.LetGo : Right.Decide;

    private static string Step(VisitState state, StepState step) =>
        $"{step.Step.Title}{(step.At == "vehicle" ? "" : $", {Engine.Vehicles.Position.Read(step.At).Match(state.Arrived.Vehicle.InWords, _ => step.At)}")}{(step.Standing == StepStanding.Failed ? $" ({step.Why})" : "")}";
}

/// <summary>What is next for one person.</summary>
/// <param name="Person">The person.</param>
/// <param name="Own">The vehicles on which this person entered last, with what each waits for that this person may do; by promised time.</param>
/// <param name="Asked">Vehicles of others that wait for what this person may do and whoever works on them may not.</param>
public sealed record PersonNext(Person Person, IReadOnlyList<BoardLine> Own, IReadOnlyList<BoardLine> Asked)
{
    /// <summary>What is next for each person who has something, in the order of their names.</summary>
    public static IReadOnlyList<PersonNext> All(IReadOnlyList<Person> people, IReadOnlyList<BoardLine> lines)
    {
        ArgumentNullException.ThrowIfNull(people);
        ArgumentNullException.ThrowIfNull(lines);
        return
        [
            .. people.Where(p => p.Role != Role.Desk).Select(p => new PersonNext(
                p,
                [.. lines.Where(l => l.HandBy == p.Name && p.Role.May(l.Next.Needs))],
                [.. lines.Where(l => l.HandBy != p.Name && l.HandRole is { } role && !role.May(l.Next.Needs) && p.Role.May(l.Next.Needs))]))
            .Where(n => n.Own.Count + n.Asked.Count > 0)
            .OrderBy(n => n.Person.Name, StringComparer.OrdinalIgnoreCase),
        ];
    }
}
