using System.Globalization;
using Trundle.Engine;
using Trundle.Engine.Complaint;
using Trundle.Engine.Findings;
using Trundle.Engine.Vehicles;
using Trundle.Sheets.Drawing;
using Trundle.Visits.Bay;
using Trundle.Visits.Operations;

namespace Trundle.Sheets;

/// <summary>The sheet for the workshop's file: everything that was found, measured, done, recorded and decided, with limits and sources.</summary>
internal static class FileSheet
{
    public static (byte[] Pdf, int Pages) Write(SheetContent content, PaperSize paper)
    {
        var number = content.State.Work.Number;
        using var document = new SheetDocument(paper, $"{content.Name}, {content.Date}, for the file", content.State.Arrived.Date, content.Texts);
        using var flow = new SheetFlow(document,
            $"{content.Name}{(number is null ? "" : $" · visit {number}")} · {content.Date}",
            $"{(content.Workshop is null ? "" : content.Workshop + " · ")}engine {EngineVersion.Engine} · tables {EngineVersion.Tables} · for the workshop's file");
        Vehicle(flow, content);
        Standing(flow, content);
        FilePaper.Came(flow, content);
        FilePaper.Agreed(flow, content);
        FileWheels.Looked(flow, content);
        FileFindings.Write(flow, content, "What was found when it came", content.Found);
        FileWheels.Planned(flow, content);
        FileStandIn.Write(flow, content);
        FileWheels.Pressures(flow, content);
        FileLosses.Write(flow, content);
        FileWheels.Balanced(flow, content);
        FileFixings.Write(flow, content);
        FileInstruments.Write(flow, content);
        FilePaper.Seen(flow, content);
        Steps(flow, content);
        FileRepairs.Write(flow, content);
        FileFindings.Write(flow, content, "What stands as it leaves", content.Leaving);
        FileFindings.Decisions(flow, content);
        FilePaper.Used(flow, content);
        Entries(flow, content);
        Editions(flow, content);
        flow.Finish();
        return document.Finish();
    }

    private static void Vehicle(SheetFlow flow, SheetContent content)
    {
        var vehicle = content.Vehicle;
        var work = content.State.Work;
        SheetText.Draw(flow.Graphics, "Sheet for the file", flow.Left, flow.At + 14, 16, SheetInk.Ink, true);
        flow.Skip(24);
        flow.Table([new("", 1.1), new("", 2.4), new("", 1.1), new("", 2.4)],
        [
            ["vehicle", content.Name, "visit", work.Number ?? "–"],
            ["odometer", vehicle.Odometer is { } o ? content.Units.Road(o) : "–", "date", content.Date],
            ["driver says", vehicle.Complaint ?? "–", "rules", content.State.Arrived.Rules is { } rules ? Land(rules) : "none chosen"],
            ["tyres on placard", content.Placard, "bay", work.Bay ?? "–"],
            ["class", vehicle.VehicleClass, "promised", work.Promised ?? "–"],
            ["torque wrench", work.TorqueWrench ?? "–", "pressure gauge", work.PressureGauge ?? "–"],
            ["VIN", vehicle.Vin is { } vin ? $"{vin.Text}{(vin.Note is { } note ? $" – {note}" : "")}" : "–", "warning lamps", content.State.Entered.Arrival.Lit is { Count: > 0 } lit ? $"lit before work: {string.Join(", ", lit)}" : content.State.Entered.Arrival.Dark.Count > 0 ? "none lit of those looked at" : "not looked at"],
            ["maker's rotation", vehicle.MakerRotation ?? "not given", "contact", work.Contact ?? "–"],
        ], 8);
        if (vehicle.ComplaintDetail is { } detail)
        {
            flow.Paragraph($"The complaint may come of, by what was said alone: {ComplaintOperation.InOneLine(ComplaintTriage.Of(detail))}");
        }
    }

    private static string Land(RuleSet rules) => rules switch
    {
        RuleSet.UnitedStates => "United States (us)",
        RuleSet.UnitedKingdom => "United Kingdom (uk)",
        RuleSet.EuropeanUnion => "European Union (eu)",
    };

    /// <summary>Whether it may leave, and by whom it was handed back.</summary>
    private static void Standing(SheetFlow flow, SheetContent content)
    {
        var state = content.State;
        flow.Heading("How the visit stands");
        flow.Paragraph(state.HandedBack
            ? $"Handed back by {state.Work.HandedBackBy}{(state.Work.HandedBackRole is { } role ? $", {role.Word()}" : "")}. Nothing stops it."
            : state.MayLeave ? "Nothing stops it, and nobody has handed it back yet." : "Not handed back. What stops it:", bold: true);
        if (state.NotTightened.Count > 0)
        {
            flow.Paragraph($"Wheels not finally tightened: {string.Join(", ", state.NotTightened)}.", SheetInk.MajorWord, bold: true);
        }

        if (state.Stops.Count > 0)
        {
            flow.Table([new("leg", 1), new("where", 1.2), new("what", 3), new("why", 3.4)],
                state.Stops.Select(s => (IReadOnlyList<Cell>)[s.Leg.Title(), content.At(s.Position), content.WhatStops(s), s.Why]));
        }
    }

    private static void Steps(SheetFlow flow, SheetContent content)
    {
        var steps = content.State.Legs.SelectMany(l => l.Steps).ToList();
        if (steps.Count == 0)
        {
            return;
        }

        flow.Heading("The hand work, step by step");
        flow.Paragraph($"{content.State.Work.Procedure.Name}, {content.State.Work.Procedure.EditionText}. Hold points are bold: none may be passed until it is recorded.", SheetInk.Soft);
        flow.Table([new("leg", 1), new("step", 2.2), new("where", 0.9), new("recorded", 2.6), new("stands", 2.6)],
            steps.GroupBy(s => (s.Step.Id, Said: Recorded(s, content), s.Standing, s.Why)).Select(same => (IReadOnlyList<Cell>)
            [
                same.First().Step.Leg.Title(),
                new(same.First().Step.Title, same.First().Step.HoldPoint),
                string.Join(" ", same.Select(s => s.At)),
                same.Key.Said,
                new(same.Key.Standing switch
                {
                    StepStanding.Open => "open" + (same.Key.Why is null ? "" : $": {same.Key.Why}"),
                    StepStanding.Passed => "passed",
                    StepStanding.Failed => $"stopped: {same.Key.Why}",
                }, same.Key.Standing == StepStanding.Failed, same.Key.Standing == StepStanding.Failed ? SheetInk.MajorWord : null),
            ]));
    }

    private static string Recorded(StepState state, SheetContent content) => state.Record switch
    {
        null => state.Step.Entry == StepEntry.Repair && state.Standing == StepStanding.Passed ? "see puncture repairs" : "–",
        { Pressure: { } pressure } => content.Units.Pressure(pressure),
        { Torques.Count: 1 } => "1 torque, see fixings",
        { Torques.Count: > 0 } torques => $"{torques.Torques.Count.ToString(CultureInfo.InvariantCulture)} torques, see fixings",
        { Inner: not null } or { Outer: not null } => $"inner {Plane(state.Record.Inner, content)}, outer {Plane(state.Record.Outer, content)}",
        _ => state.Record.Word ?? "–",
    };

    private static string Plane(PlaneDisplay? plane, SheetContent content) =>
        plane is null ? "–" : string.Create(CultureInfo.InvariantCulture, $"{content.Units.Mass(plane.Mass)} at {Math.Round(plane.AngleDegrees)}°");

    private static void Entries(SheetFlow flow, SheetContent content)
    {
        if (content.Entries.Count == 0)
        {
            return;
        }

        flow.Heading("Every entry, as typed");
        flow.Paragraph("A later entry for the same field supersedes the earlier one; none is changed or taken away.", SheetInk.Soft);
        var newest = VisitFields.Of(content.Entries).Newest.Select(e => e.Id).ToHashSet();
        flow.Table([new("when (UTC)", 1.5), new("field", 2.6), new("typed", 2.4), new("by", 1.3), new("", 0.9)],
            content.Entries.Select(e => (IReadOnlyList<Cell>)
            [
                e.At.UtcDateTime.ToString("yyyy-MM-dd HH:mm:ss", CultureInfo.InvariantCulture),
                e.Field,
                e.Typed.Length == 0 ? "(taken away)" : e.Typed,
                $"{e.By}, {e.Role.Word()}",
                newest.Contains(e.Id) ? "" : "superseded",
            ]), 6.9);
    }

    private static void Editions(SheetFlow flow, SheetContent content)
    {
        flow.Heading("What computed this", 40);
        flow.Paragraph($"Engine {EngineVersion.Engine}, tables and figures edition {EngineVersion.Tables}, procedure of {content.State.Work.Procedure.EditionText}. The numbers are those of the visit's check for the same file, rounded for reading.");
        var memory = content.Found.Concat(content.Leaving).Select(f => f.Limit?.Source ?? f.Source).Where(s => s.Status == SourceStatus.FromMemory).Select(s => s.Text).Distinct(StringComparer.Ordinal).ToList();
        if (memory.Count > 0)
        {
            flow.Paragraph($"From memory, not checked against the text: {string.Join("; ", memory)}.");
        }
    }
}
