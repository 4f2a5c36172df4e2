using System.Globalization;
using Trundle.Engine.Findings;
using Trundle.Measures;
using Trundle.Store;
using Trundle.Visits.Bay;

namespace Trundle.Web.Office.Board;

/// <summary>One vehicle on the board.</summary>
/// <param name="Visit">The visit.</param>
/// <param name="Vehicle">What the vehicle is called.</param>
/// <param name="Bay">Which bay, or null while it waits outside.</param>
/// <param name="Promised">When it was promised, or null.</param>
/// <param name="PromisedText">As typed, where it is no time that could be read; else null.</param>
/// <param name="Late">The promised time is over.</param>
/// <param name="Leg">Where the work stands.</param>
/// <param name="LegLine">How far that leg is.</param>
/// <param name="Waiting">What it waits for, in words.</param>
/// <param name="Loose">Wheels at which work has begun and whose fixings are not finally tightened, in words.</param>
/// <param name="Worst">The gravest finding.</param>
public sealed record BoardLine(
    VisitHeading Visit, string Vehicle, string? Bay, DateTime? Promised, string? PromisedText, bool Late,
    Leg Leg, string LegLine, string Waiting, IReadOnlyList<string> Loose, Category Worst)
{
    private static readonly string[] TimeForms = ["yyyy-MM-dd HH:mm", "yyyy-MM-dd'T'HH:mm", "yyyy-MM-dd HH:mm:ss", "yyyy-MM-dd"];

    /// <summary>Every vehicle in the workshop by its promised time; those without one at the end, in the order in which they came.</summary>
    public static IReadOnlyList<BoardLine> All(IEnumerable<StoredVisit> visits, IReadOnlyList<CondemnedLine> register, DateTimeOffset now) =>
        [.. visits.Select(v => Of(v, register, now)).OrderBy(l => l.Promised ?? DateTime.MaxValue).ThenBy(l => l.Visit.OpenedAt)];

    /// <summary>The line of one visit.</summary>
    public static BoardLine Of(StoredVisit visit, IReadOnlyList<CondemnedLine> register, DateTimeOffset now)
    {
        ArgumentNullException.ThrowIfNull(visit);
        var problems = new List<Problem>();
        return Of(visit, VisitStanding.Of(visit.Fields, visit.Heading.Id, register, problems), problems, now);
    }

    /// <summary>The line of one visit whose state is known.</summary>
    public static BoardLine Of(StoredVisit visit, VisitState state, IReadOnlyList<Problem> problems, DateTimeOffset now)
    {
        ArgumentNullException.ThrowIfNull(visit);
        ArgumentNullException.ThrowIfNull(state);
        ArgumentNullException.ThrowIfNull(problems);
        var promised = state.Work.Promised is { } text && DateTime.TryParseExact(text, TimeForms, CultureInfo.InvariantCulture, DateTimeStyles.None, out var time) ? time : (DateTime?)null;
        return new BoardLine(
            visit.Heading,
            state.Arrived.Vehicle.Name ?? "A vehicle not yet named",
            state.Work.Bay,
            promised,
            promised is null ? state.Work.Promised : null,
            promised < now.DateTime,
            state.Current,
            VisitStanding.Line(state, state.Current),
            problems.Count > 0 ? $"{problems[0].Where}: {problems[0].Message}" : WaitsFor(state),
            [.. state.Loose.Select(state.Arrived.Vehicle.InWords)],
            FindingSet.Worst(state.LeavingFindings));
    }

    /// <summary>The first thing that the current leg still needs, and how many more there are.</summary>
    private static string WaitsFor(VisitState state)
    {
        var leg = state.On(state.Current);
        // A wheel that was begun is gone on with before the next one.
        var begun = leg.Steps.Where(s => s.Record is not null).Select(s => s.At).ToHashSet();
        var open = leg.Steps.Where(s => s.Standing != StepStanding.Passed).OrderBy(s => s.Standing == StepStanding.Failed ? 0 : begun.Contains(s.At) && s.At != "vehicle" ? 1 : 2).ToList();
        var (first, count) = leg.Needs.Count > 0 && state.Current != Leg.HandBack ? (leg.Needs[0].What, leg.Needs.Count + open.Count)
            : open.Count > 0 ? (Step(open[0]), open.Count)
            : state.Stops.Count > 0 ? ($"{state.Stops[0].What}: {state.Stops[0].Why}", state.Stops.Count)
            : ("somebody to hand it back", 1);
        return count == 1 ? first : string.Create(CultureInfo.InvariantCulture, $"{first}, and {count - 1} more");

        string Step(StepState step) =>
            $"{step.Step.Title}{(step.At == "vehicle" ? "" : $", {Words(step.At)}")}{(step.Standing == StepStanding.Failed ? $" ({step.Why})" : "")}";

        string Words(string at) => Engine.Vehicles.Position.Read(at).Match(state.Arrived.Vehicle.InWords, _ => at);
    }
}
