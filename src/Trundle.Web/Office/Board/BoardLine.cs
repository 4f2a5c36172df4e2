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
    /// <summary>The first thing that it waits for.</summary>
    public required NextThing Next { get; init; }

    /// <summary>Who entered last at the vehicle, or null where only the desk did.</summary>
    public string? HandBy { get; init; }

    /// <summary>What that person is.</summary>
    public Role? HandRole { get; init; }

    private static readonly string[] TimeForms = ["yyyy-MM-dd HH:mm", "yyyy-MM-dd'T'HH:mm", "yyyy-MM-dd HH:mm:ss", "yyyy-MM-dd"];

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
        var hand = visit.Fields.Newest.Where(e => e.Role != Role.Desk).MaxBy(e => (e.At, e.Id));
        var next = NextThing.Of(visit.Heading.Id, state, hand);
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
            problems.Count > 0 ? $"{problems[0].Where}: {problems[0].Message}" : next.Words,
            [.. state.Loose.Select(state.Arrived.Vehicle.InWords)],
            FindingSet.Worst(state.LeavingFindings))
        {
            Next = next,
            HandBy = hand?.By,
            HandRole = hand?.Role,
        };
    }
}
