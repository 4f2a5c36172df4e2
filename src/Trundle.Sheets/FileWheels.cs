using System.Globalization;
using System.Text.Json.Nodes;
using PdfSharp.Drawing;
using Trundle.Engine.Condition;
using Trundle.Engine.Fitment;
using Trundle.Engine.Vehicles;
using Trundle.Measures;
using Trundle.Sheets.Drawing;
using Trundle.Sheets.Pictures;
using Trundle.Visits.Bay;
using Trundle.Visits.Operations;

namespace Trundle.Sheets;

/// <summary>The parts of the file's sheet that go wheel by wheel.</summary>
internal static class FileWheels
{
    /// <summary>Each wheel as it came: what its sidewall and stamp say, its depths in cross-section, pressure and damage.</summary>
    public static void Looked(SheetFlow flow, SheetContent content)
    {
        var wheels = content.Wheels.Where(w => w.Arrived is not null).ToList();
        if (wheels.Count == 0)
        {
            return;
        }

        const double width = 190;
        var height = TreadPicture.Height(width) + 22;
        flow.Heading("Each wheel as it came", height + 12);
        var scale = new DepthScale(content.Units.Habits.Depth, content.DepthLimit);
        foreach (var wheel in wheels)
        {
            var facts = Facts(wheel.Arrived!, content).ToList();
            var room = flow.Width - width - 16;
            var needed = 18 + facts.Sum(f => SheetText.ParagraphHeight(flow.Graphics, f, room, 8));
            flow.Need(Math.Max(height, needed) + 6);
            var top = flow.At;
            SheetText.Draw(flow.Graphics, $"{wheel.Name}, {wheel.Position}", flow.Left, top + 11, 9.5, SheetInk.Ink, true);
            var y = top + 16;
            foreach (var fact in facts)
            {
                y += SheetText.Paragraph(flow.Graphics, fact, flow.Left, y, room, 8, SheetInk.Ink);
            }

            TreadPicture.Draw(flow.Graphics, new XRect(flow.Left + room + 16, top + 8, width, height - 14), wheel.Arrived!.Tread, scale);
            flow.Skip(Math.Max(height, y - top) + 4);
        }
    }

    private static IEnumerable<string> Facts(Assembly assembly, SheetContent content)
    {
        var tyre = assembly.Tyre;
        yield return $"Tyre {tyre?.Id ?? ""} {tyre?.Marking?.Typed ?? "marking not entered"}{(tyre?.Tin is { } tin ? $", TIN {tin}" : "")}{(tyre?.Marks is { Count: > 0 } marks ? $", {string.Join(" ", marks)}" : "")}".Replace("  ", " ", StringComparison.Ordinal);
        if (tyre is { Directional: true } or { Asymmetric: true })
        {
            yield return string.Join(", ", new[]
            {
                tyre.Directional && content.Vehicle.SingleTrack ? $"directional{(tyre.MountedFor is { } way ? Facing.TurnsItsWay(assembly.Position, way) ? ", turns the way of its arrow" : ", turns against its arrow" : "")}"
                : tyre.Directional ? $"directional{(tyre.MountedFor is { } side ? $", mounted for the {(side == MountedFor.Left ? "left" : "right")}" : "")}" : null,
                tyre.Asymmetric ? $"asymmetric{(tyre.OuterFaceOut is { } @out ? @out ? ", outer face out" : ", outer face in" : "")}" : null,
            }.OfType<string>());
        }

        if (assembly.Wheel is { } wheel)
        {
            yield return "Wheel " + string.Join(", ", new[]
            {
                wheel.Id,
                wheel.Rim?.Text,
                wheel.Offset is { } offset ? $"offset {offset.Text("mm", 0)}" : null,
                wheel.Material switch { WheelMaterial.Steel => "steel", WheelMaterial.Alloy => "alloy", null => null },
                wheel.Bore is { } bore ? $"bore {bore.Text("mm", 1)}" : null,
                wheel.BoltCircle is { } circle ? $"{circle.Count.ToString(CultureInfo.InvariantCulture)} × {circle.Diameter.Text("mm", 1)}" : null,
                wheel.LoadRating is { } load ? $"load rating {content.Units.InText(load.Text("kg", 0))}" : null,
            }.OfType<string>());
        }

        yield return assembly.Pressure is { } p
            ? $"Pressure found {content.Units.Pressure(p.Value)}{(p.Hot ? ", hot" : ", cold")}{(p.Temperature is { } t ? $", air {t.Text("°C", 0)}" : "")}"
            : "Pressure not taken";
        if (assembly.Load is { } weighed)
        {
            yield return $"Load on this wheel, weighed: {weighed.Text("kg", 0)}";
        }

        if (assembly.Sensor is { } sensor)
        {
            yield return $"Pressure sensor: {sensor switch { SensorState.Working => "working", SensorState.NotWorking => "not working", SensorState.Absent => "none in this wheel" }}";
        }

        if (content.Wear.FirstOrDefault(w => w.Position == assembly.Position) is { } wear)
        {
            yield return $"Wear: {WearAnswer.InOneLine(wear)}";
        }

        foreach (var damage in assembly.Damage)
        {
            yield return $"Damage: {Visits.Files.InspectionFileReader.DamageWords.First(w => w.Value == damage.Kind).Word} in the {damage.Place.ToString().ToLowerInvariant()}{(damage.Size is { } size ? $", {size.Text("mm", 0)}" : "")}";
        }

        foreach (var part in content.Verdicts.Where(v => v.Position == assembly.Position && (v.Verdict != Verdict.MayRun || v.Damage.Count > 0)))
        {
            // What is no damage is a reason too: the depth, the age, the pressure that was found.
            var why = part.Damage.Select(d => $"{d.What}: {d.Verdict.Word()}")
                .Concat(part.Reasons.Where(r => r.Category > Engine.Findings.Category.None && (part.Damage.Count == 0 || !(r.Rule.StartsWith("damage.", StringComparison.Ordinal) || r.Rule.StartsWith("wheel.", StringComparison.Ordinal)))).Select(r => content.Said(r, Engine.Findings.FindingWords.Of(r))))
                .Distinct(StringComparer.Ordinal).ToList();
            yield return $"{SheetContent.Capital(part.Part.Word())}: {part.Verdict.Word()}{(why.Count > 0 ? $" ({string.Join("; ", why)})" : "")}";
        }

        if (tyre?.History is { Policy: { } policy } history)
        {
            yield return $"Repair by the tyre's maker: {(policy == RepairPolicy.Permitted ? "permitted" : "not permitted")}{(history.PolicyText is { } text ? $" ({text})" : "")}";
        }

        if (tyre is { Condemned: true } || assembly.Wheel is { Condemned: true })
        {
            yield return "Condemned: it may not be fitted again.";
        }
    }

    /// <summary>What was planned and what came of it at each wheel.</summary>
    public static void Planned(SheetFlow flow, SheetContent content)
    {
        flow.Heading("What was planned and done");
        flow.Paragraph($"Rotation: {content.State.Work.Rotation ?? "not decided"}.");
        flow.Table([new("wheel", 1.3), new("planned", 1), new("new tyre on the wheel that came from here", 3), new("comes from", 1), new("leaves with", 2.6)],
            content.Wheels.Select(w => (IReadOnlyList<Cell>)
            [
                $"{w.Name}, {w.Position}",
                w.Job is { } job ? job.Word() : "–",
                w.Renewed is { } r ? $"{r.Tyre.Id} {r.Tyre.Marking?.Typed}{(r.Tyre.Tin is { } tin ? $", TIN {tin}" : "")}".Trim() : "–",
                w.CameFrom == w.Position ? "–" : w.CameFrom.ToString(),
                w.Leaving?.Tyre is { } tyre ? $"{tyre.Id} {tyre.Marking?.Typed}{(w.Leaving.Pressure is { } p ? $", {content.Units.ShortPressure(p.Value)}" : "")}".Trim() : "–",
            ]));
        foreach (var line in content.Did)
        {
            flow.Paragraph(line);
        }

        if (content.Rotation is { } rotation)
        {
            var pattern = rotation["pattern"]?.ToString();
            flow.Paragraph($"Rotation that was offered: {pattern ?? "none"}. {rotation["why"]}{(pattern is null ? "" : $" ({rotation["source"]}; {rotation["status"]})")}");
            foreach (var refused in (rotation["refused"] as JsonArray ?? []).OfType<JsonObject>())
            {
                flow.Paragraph($"Refused: {refused["pattern"]}. {refused["why"]}", SheetInk.Soft, 7.4);
            }
        }
    }

    /// <summary>Every pressure with the limit that ruled and its source.</summary>
    public static void Pressures(SheetFlow flow, SheetContent content)
    {
        var wheels = content.Wheels.Where(w => w.Pressure is not null).ToList();
        if (wheels.Count == 0)
        {
            return;
        }

        flow.Heading("Pressures");
        if (wheels.Any(w => w.Renewed is not null))
        {
            flow.Paragraph($"Reckoned for the tyres that came in. New tyres were put on: {string.Join(" ", wheels.Where(w => w.Renewed is not null).Select(w => w.Position))}; what they were set to stands last.", SheetInk.Soft);
        }

        flow.Table([new("wheel", 0.8), new("found", 1), new("cold", 2.5), new("warning below", 2.1), new("seating, at most", 2.9), new("set to", 0.9)],
            wheels.GroupBy(w => (Cold: Sourced(w.Pressure!["cold"], content), Warning: Sourced(w.Pressure["warning"], content), Seating: Sourced(w.Pressure["seatingLimit"], content), Set: w.SetTo is { } set ? content.Units.ShortPressure(set) : "–"))
                .Select(alike => (IReadOnlyList<Cell>)
                [
                    string.Join(" ", alike.Select(w => w.Position)),
                    string.Join("\n", alike.Select(w => $"{(alike.Count() > 1 ? $"{w.Position} " : "")}{(w.Arrived?.Pressure is { } found ? content.Units.ShortPressure(found.Value) : "–")}")),
                    alike.Key.Cold, alike.Key.Warning, alike.Key.Seating, alike.Key.Set,
                ]));
        var considered = wheels.SelectMany(w => (w.Pressure!["considered"] as JsonArray ?? []).OfType<JsonObject>().Select(l => (w.Position, Limit: l))).ToList();
        if (considered.Count > 0)
        {
            flow.SubHeading("Limits considered for the cold pressure");
            flow.Table([new("limit", 2.1), new("", 0.8), new("value", 1), new("source and status", 4.3), new("at", 1.4), new("", 0.6)],
                considered.GroupBy(c => c.Limit.ToJsonString()).Select(same => (same.First().Limit, At: string.Join(" ", same.Select(s => s.Position)))).Select(l => (IReadOnlyList<Cell>)
                [
                    Word(l.Limit, "name"),
                    Word(l.Limit, "bound") == "least" ? "at least" : "at most",
                    l.Limit["kilopascals"] is JsonValue v && v.TryGetValue<double>(out var kPa) ? content.Units.ShortPressure(GaugePressure.FromKilopascals(kPa)) : "not given",
                    Word(l.Limit, "status").Length == 0 ? Word(l.Limit, "source") : $"{Word(l.Limit, "source")} ({Word(l.Limit, "status")})",
                    l.At,
                    new(l.Limit["ruled"]?.GetValue<bool>() == true ? "ruled" : "", true),
                ]), 6.9);
        }

        // A caution that is not for every wheel names those that it is for.
        foreach (var caution in wheels.SelectMany(w => (w.Pressure!["cautions"] as JsonArray ?? []).Select(c => (w.Position, Text: c!.GetValue<string>()))).GroupBy(c => c.Text, c => c.Position, StringComparer.Ordinal))
        {
            var at = caution.Distinct().ToList();
            flow.Paragraph($"Caution{(at.Count < wheels.Count ? $", {string.Join(" ", at)}" : "")}: {content.Units.InText(caution.Key)}");
        }
    }

    /// <summary>Each balanced wheel in both planes, before and after.</summary>
    public static void Balanced(SheetFlow flow, SheetContent content)
    {
        var wheels = content.Wheels.Where(w => w.Balance is not null || w.CheckSpin is not null).ToList();
        if (wheels.Count == 0)
        {
            return;
        }

        const double side = 96;
        flow.Heading("Balance", side + 30);
        flow.Paragraph("Dot: heavy place before. Square: where the weights bring it. Dashed: what may be left. Valve at twelve, angles clockwise as seen from outside.", SheetInk.Soft, 7.2);
        foreach (var wheel in wheels)
        {
            flow.Need(side + 26);
            var top = flow.At;
            SheetText.Draw(flow.Graphics, $"{wheel.Name}, {wheel.Position}", flow.Left, top + 11, 9.5, SheetInk.Ink, true);
            var x = flow.Left;
            if (wheel.Balance is { } balance)
            {
                var full = PolarPicture.FullScale(new[] { balance.Inner.Heavy, balance.Outer.Heavy, balance.Inner.Left, balance.Outer.Left }.OfType<PolarMark>().Select(m => m.Mass), content.Units.Habits.Mass);
                foreach (var plane in new[] { balance.Inner, balance.Outer })
                {
                    SheetText.Draw(flow.Graphics, plane.Title, x, top + 24, 7.5, SheetInk.Soft);
                    PolarPicture.Draw(flow.Graphics, x + 4, top + 24, side, plane, full, content.Units.Habits.Mass);
                    x += side + 22;
                }
            }

            var y = top + 16;
            var room = flow.Left + flow.Width - x - 8;
            foreach (var line in BalanceLines(wheel, content))
            {
                y += SheetText.Paragraph(flow.Graphics, line, x + 8, y, room, 8, SheetInk.Ink);
            }

            flow.Skip(Math.Max(wheel.Balance is null ? 0 : side + 32, y - top) + 6);
        }
    }

    private static IEnumerable<string> BalanceLines(SheetWheel wheel, SheetContent content)
    {
        if (wheel.Balance is { } balance)
        {
            foreach (var plane in new[] { balance.Inner, balance.Outer })
            {
                yield return $"{plane.Title}: {(plane.Heavy is { } heavy ? $"heavy place {content.Units.Mass(heavy.Mass)} at {heavy.At} before" : "not measured")}{(plane.Left is { } left ? $", {content.Units.Mass(left.Mass)} at {left.At} after" : "")}.";
            }

            yield return balance.Weights.Count == 0 ? "No weights needed." : $"Weights: {string.Join("; ", balance.Weights)}.";
            if (balance is { StaticGramMillimetres: { } still, CoupleGramSquareMillimetres: { } couple })
            {
                yield return $"Left: static {Quantity.Number(still, 0)} g·mm, couple {Quantity.Number(couple / 1000, 1)} kg·mm²{(balance.WithinTolerance is { } within ? within ? "; within tolerance" : "; NOT within tolerance" : "")}{(balance.ToleranceWords.Length == 0 ? "" : $": {balance.ToleranceWords}")}.";
            }
        }

        if (wheel.CheckSpin is { } spin)
        {
            yield return $"Check spin: inner {(spin.Inner is { } i ? content.Units.Mass(i.Mass) : "–")}, outer {(spin.Outer is { } o ? content.Units.Mass(o.Mass) : "–")}.";
        }
    }

    private static string Sourced(JsonNode? node, SheetContent content) =>
        node is JsonObject o && o["kilopascals"] is JsonValue v && v.TryGetValue<double>(out var kPa)
            ? $"{content.Units.Pressure(GaugePressure.FromKilopascals(kPa))}\n{Word(o, "source")} ({Word(o, "status")})"
            : "not known";

    private static string Word(JsonObject o, string key) => o[key]?.ToString() ?? "";
}
