using System.Globalization;
using System.Text.Json.Nodes;
using Trundle.Measures;
using Trundle.Sheets.Drawing;
using Trundle.Sheets.Pictures;

namespace Trundle.Sheets;

/// <summary>The fixings on the file's sheet: order on the stud circle, stages, clamp, and the recorded torque of every fixing.</summary>
internal static class FileFixings
{
    private const double Side = 132;

    public static void Write(SheetFlow flow, SheetContent content)
    {
        var axles = content.Axles.Where(a => a.Answer is not null).ToList();
        if (axles.Count > 0)
        {
            flow.Heading("Fixings", Side);
        }

        // Axles that are fixed alike share one drawing.
        foreach (var alike in axles.GroupBy(a => (Answer: Without(a.Answer!, "axle"), a.Hub)))
        {
            var axle = alike.First();
            var name = string.Join(" and ", alike.Select((a, i) => i == 0 ? a.Name : a.Name.ToLowerInvariant()));
            var lines = Lines(axle, content).ToList();
            var room = flow.Width - Side - 14;
            var height = 16 + lines.Sum(l => SheetText.ParagraphHeight(flow.Graphics, l, room, 8));
            flow.Need(Math.Max(Side, height) + 4);
            var top = flow.At;
            StudPicture.Draw(flow.Graphics, flow.Left, top - 4, Side, axle.Order, axle.Hub?.BoltCircle, axle.Hub?.Bore);
            SheetText.Draw(flow.Graphics, name, flow.Left + Side + 14, top + 11, 9.5, SheetInk.Ink, true);
            var y = top + 16;
            foreach (var line in lines)
            {
                y += SheetText.Paragraph(flow.Graphics, line, flow.Left + Side + 14, y, room, 8, SheetInk.Ink);
            }

            flow.Skip(Math.Max(Side - 6, y - top) + 4);
        }

        Staged(flow, content);
        Recorded(flow, content);
        CheckedAgain(flow, content);
        var cautions = axles.SelectMany(a => (a.Answer!["cautions"] as JsonArray ?? []).Select(c => c!.GetValue<string>())).Distinct(StringComparer.Ordinal);
        foreach (var caution in cautions)
        {
            flow.Paragraph($"Caution: {caution}", size: 7.4);
        }
    }

    private static IEnumerable<string> Lines(SheetAxle axle, SheetContent content)
    {
        var answer = axle.Answer!;
        var fixings = axle.Fixings;
        yield return string.Join(", ", new[]
        {
            $"{axle.Order.Count.ToString(CultureInfo.InvariantCulture)} {(fixings?.Kind switch { Engine.Vehicles.FixingKind.Nut => "nut", Engine.Vehicles.FixingKind.Bolt => "bolt", null => "fixing" })}{(axle.Order.Count == 1 ? "" : "s")}",
            fixings?.Thread?.Text,
            fixings?.PropertyClass is { } c ? $"class {c}" : null,
            fixings?.Seat is { } seat ? $"{seat.ToString().ToLowerInvariant()} seat" : "seat not given",
            fixings?.Condition is { } condition ? condition.ToString().ToLowerInvariant() : "dry or oiled not given",
            fixings?.LeftHand == true ? "left-hand thread: tighten anticlockwise, loosen clockwise"
                : fixings?.LeftHandSide is { } side ? $"left-hand threads on the {side.ToString().ToLowerInvariant()} side: there tighten anticlockwise, loosen clockwise" : null,
        }.OfType<string>());
        foreach (var limit in fixings is null ? [] : Engine.Fixings.LeastEngagement.Of(fixings))
        {
            yield return $"Engaged {fixings!.Engagement!.Text}, {(limit.Breached ? "LESS than" : "at least")} {limit.Least.Amount.Text} ({limit.Least.Source.Text}; {limit.Least.Source.StatusText})";
        }

        yield return $"Order{(answer["makerOrder"] is null ? "" : ", the maker's own")}: {string.Join(" – ", axle.Order)}";
        yield return $"Stages: {string.Join(", ", (answer["stages"] as JsonArray ?? []).OfType<JsonObject>().Select(s => $"{Quantity.Number(s["percent"]!.GetValue<double>(), 0)} % {(Number(s["torqueNewtonMetres"]) is { } t ? content.Units.Torque(Torque.FromNewtonMetres(t)) : "torque not given")}"))}";
        if (answer["clamp"] is JsonObject clamp && Number(clamp["lowKilonewtons"]) is { } low)
        {
            var proof = Number(clamp["proofLoadKilonewtons"]) is { } p ? $", proof load {Quantity.Number(p, 1)} kN" : "";
            yield return $"Clamp: {Quantity.Number(low, 1)} to {Quantity.Number(Number(clamp["highKilonewtons"])!.Value, 1)} kN, nominal {Quantity.Number(Number(clamp["nominalKilonewtons"])!.Value, 1)} kN{proof} ({clamp["source"]}; {clamp["status"]})";
        }

        if (answer["reTorque"] is JsonObject again)
        {
            yield return $"Re-torque after {content.Units.ToGo(Length.FromKilometres(again["fromKilometres"]!.GetValue<double>()), Length.FromKilometres(again["toKilometres"]!.GetValue<double>()))} ({again["source"]}; {again["status"]})";
        }
    }

    /// <summary>What each fixing got at each stage, by whom and with which wrench.</summary>
    private static void Staged(SheetFlow flow, SheetContent content)
    {
        var stages = content.State.Work.Tightening.OrderBy(t => t.Key.ToString(), StringComparer.Ordinal).SelectMany(t => t.Value.Torques.Select(s => (At: t.Key, t.Value, Stage: s))).ToList();
        if (stages.Count == 0)
        {
            return;
        }

        var most = stages.Max(s => s.Stage.Torques.Keys.Max());
        flow.SubHeading($"What each fixing got at each stage, in {content.Units.Habits.Torque}");
        var columns = new List<Column> { new("wheel", 0.7), new("stage", 1.1) };
        columns.AddRange(Enumerable.Range(1, most).Select(n => new Column(n.ToString(CultureInfo.InvariantCulture), 0.7)));
        columns.Add(new("wrench", 1.3));
        columns.Add(new("by", 1.1));
        flow.Table(columns, stages.Select(s => (IReadOnlyList<Cell>)
        [
            s.At.ToString(),
            $"{(s.Stage.Stage + 1).ToString(CultureInfo.InvariantCulture)}{(s.Value.Stages.ElementAtOrDefault(s.Stage.Stage) is { } of ? $", {Quantity.Number(of.Percent, 0)} %" : "")}",
            .. Enumerable.Range(1, most).Select(n => (Cell)(s.Stage.Torques.TryGetValue(n, out var t) ? Quantity.Number(t.In(content.Units.Habits.Torque), 0) : "–")),
            s.Stage.Wrench ?? "–",
            s.Stage.By ?? "–",
        ]), most > 10 ? 6.4 : 7.4);
    }

    private static void Recorded(SheetFlow flow, SheetContent content)
    {
        var wheels = content.Wheels.Where(w => w.FinalTorques.Count > 0).ToList();
        if (wheels.Count == 0)
        {
            return;
        }

        var most = wheels.Max(w => w.FinalTorques.Keys.Max());
        flow.SubHeading($"Final torque of every fixing, vehicle standing, in {content.Units.Habits.Torque}");
        var columns = new List<Column> { new("wheel", 1.6), new("maker's", 1) };
        columns.AddRange(Enumerable.Range(1, most).Select(n => new Column(n.ToString(CultureInfo.InvariantCulture), 0.7)));
        columns.Add(new("", 1.6));
        flow.Table(columns, wheels.Select(w => (IReadOnlyList<Cell>)
        [
            $"{w.Name}, {w.Position}",
            content.Axles.FirstOrDefault(a => a.Axle == w.Position.Axle)?.Fixings?.Torque is { } maker ? Quantity.Number(maker.In(content.Units.Habits.Torque), 0) : "not given",
            .. Enumerable.Range(1, most).Select(n => (Cell)(w.FinalTorques.TryGetValue(n, out var t) ? Quantity.Number(t.In(content.Units.Habits.Torque), 0) : "–")),
            w.FinallyTightened ? "every one" : new Cell("NOT finally tightened", true, SheetInk.MajorWord),
        ]), most > 10 ? 6.4 : 7.4);
    }

    /// <summary>The re-torque that the visit leaves due, and whether it was done.</summary>
    private static void CheckedAgain(SheetFlow flow, SheetContent content)
    {
        // Before any fixing has its final torque there is nothing to check again.
        if (Visits.Bay.ReTorqueDue.Of(content.State) is not { } due || (due.Done is null && content.Wheels.All(w => w.FinalTorques.Count == 0)))
        {
            return;
        }

        var where = due is { From: { } from, To: { } to } ? $"between {content.Units.Road(from)} and {content.Units.Road(to)}" : $"after {content.Units.ToGo(due.After.From, due.After.To)}";
        flow.Paragraph(due.Done is not { } done
            ? $"Re-torque due {where}{(due.After.Standing is { } standing ? $", or after {standing.Amount.Text} where it only stands" : "")} ({due.After.Source.Text}; {due.After.Source.StatusText}); not recorded as done."
            : $"Re-torque checked on {done.On.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)}{(done.Odometer is { } at ? $" at {content.Units.Road(at)}" : "")}{(done.By is { } by ? $" by {by}" : "")}{(done.Wrench is { } wrench ? $" with {wrench}" : "")}: {done.Words}{(done.Turned ? $"; due again {where}" : "")}.{(done.Note is { } note ? $" {note.TrimEnd('.')}." : "")}", bold: true);
        foreach (var (wheel, torques) in due.Done?.Torques ?? new Dictionary<Engine.Vehicles.Position, IReadOnlyDictionary<int, Torque>>())
        {
            flow.Paragraph($"Found at {wheel}: {string.Join(", ", torques.OrderBy(t => t.Key).Select(t => $"{t.Key.ToString(CultureInfo.InvariantCulture)} {content.Units.Torque(t.Value)}"))}.");
        }
    }

    private static string Without(JsonObject answer, string key)
    {
        var copy = (JsonObject)answer.DeepClone();
        copy.Remove(key);
        return copy.ToJsonString();
    }

    private static double? Number(JsonNode? node) => node is JsonValue value && value.TryGetValue<double>(out var number) ? number : null;
}
