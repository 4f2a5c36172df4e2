using Trundle.Visits.Bay;
using Trundle.Visits.Procedures;

namespace Trundle.Browser.Tests;

/// <summary>What is typed and touched on one invented visit: a van whose front left loses air.</summary>
internal static class InventedVisit
{
    private const string Marking = "205/65 R16C 107/105T";

    /// <summary>Place by place, all that is entered before a wheel comes off; the vehicle's name is there already.</summary>
    public static IReadOnlyList<(string Place, (string Field, string Value)[] Entries)> BeforeTheHandWork { get; } =
    [
        ("arrive", [("vehicle.complaint", "front left loses air"), ("vehicle.odometer", "81500"), ("rules", "uk"), ("date", "2026-03-14")]),
        .. new[] { 0, 1 }.Select(axle => ($"arrive/axle-{axle + 1}", new[]
        {
            ($"vehicle.axles.{axle}.placard.size", Marking), ($"vehicle.axles.{axle}.placard.cold", "380"),
            ($"vehicle.axles.{axle}.fixings.count", "5"), ($"vehicle.axles.{axle}.fixings.torque", "160"),
        })),
        .. new[] { "1L", "1R", "2L", "2R" }.Select(position => ($"lookOver/{position}", new[]
        {
            ($"fitted.{position}.tyre.marking", Marking), ($"fitted.{position}.tread.inner.0", "6.1"), ($"fitted.{position}.tread.centre.0", "6,4"),
            ($"fitted.{position}.tread.outer.0", "6.0 mm"), ($"fitted.{position}.pressure.value", position == "1L" ? "55 psi" : "382"),
        })),
        ("plan/rotation", [("work.rotation", "none")]),
        ("plan/jobs", [("work.jobs.1L", "demount"), ("work.jobs.1R", "stays on"), ("work.jobs.2L", "stays on"), ("work.jobs.2R", "stays on")]),
    ];

    /// <summary>What is entered at a step; a button under the thumb has no field of its own.</summary>
    public static IReadOnlyList<(string? Field, string Value)> StepEntries(StepState open)
    {
        var field = open.Step.FieldAt(open.At);
        return open.Step.Entry switch
        {
            StepEntry.Confirm => [(null, "Done")],
            // Each stage once it has gone round, then the word that all are done.
            StepEntry.Choice when open.Step.Id == "stages" => [(null, "Stage 1 done"), (null, "Stage 2 done"), (null, open.Step.Passing[0])],
            StepEntry.Choice when open.Step.Choices.Count > 3 => [(field, open.Step.Passing[0])],
            StepEntry.Choice => [(null, open.Step.Passing[0])],
            StepEntry.Text => [(field, "nothing to add")],
            StepEntry.Pressure => [(field, open.Step.Id == "seat" ? "240" : "380")],
            StepEntry.Spin => [($"{field}.inner.mass", "0"), ($"{field}.inner.angle", "0"), ($"{field}.outer.mass", "0"), ($"{field}.outer.angle", "0")],
            StepEntry.Torques => [.. Enumerable.Range(1, 5).Select(n => ((string?)$"{field}.{n}", "160"))],
            StepEntry.Repair or StepEntry.Nothing => throw new InvalidOperationException($"This visit has no such step: {open.Step.Id}."),
        };
    }
}
