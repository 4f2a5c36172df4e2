using System.Globalization;
using Trundle.Measures;
using Trundle.Sheets.Drawing;
using Trundle.Visits.Bay;

namespace Trundle.Sheets;

/// <summary>Punctures that were repaired or refused, and wheels that a licensed shop did, on the sheet for the file.</summary>
internal static class FileRepairs
{
    public static void Write(SheetFlow flow, SheetContent content)
    {
        var work = content.State.Work;
        if (work.Repairs.Count > 0)
        {
            flow.Heading("Puncture repairs");
            flow.Table([new("wheel, tyre", 2), new("found from inside", 2.6), new("repaired with", 1.9), new("verdict", 3), new("recorded", 2.4)],
                work.Repairs.OrderBy(r => r.Key.ToString(), StringComparer.Ordinal).Select(r => Row(content, r.Key.ToString(), r.Value, RepairJudge.OnVisit(content.State, r.Key))));
        }

        if (work.Licensed.Count > 0)
        {
            flow.Heading("Rims of several pieces, done by a licensed shop");
            flow.Table([new("wheel", 1), new("licensed shop, and who there", 3), new("number of its paper", 2)],
                work.Licensed.OrderBy(l => l.Key.ToString(), StringComparer.Ordinal).Select(l => (IReadOnlyList<Cell>)[$"{content.At(l.Key.ToString())}, {l.Key}", l.Value.By ?? "not entered", l.Value.Paper ?? "not entered"]));
        }
    }

    private static IReadOnlyList<Cell> Row(SheetContent content, string at, RepairRecord repair, JudgedRepair? judged)
    {
        var tyre = judged?.Assembly.Tyre;
        var refused = judged?.Verdict.Refused.Count > 0;
        return
        [
            string.Join(", ", new[] { content.At(at), at, tyre?.Id, tyre?.Marking?.Typed, tyre?.Tin is { } tin ? $"TIN {tin}" : null }.OfType<string>()),
            Joined(
                RepairRecord.PlaceWords.FirstOrDefault(w => w.Value == repair.Place).Word,
                repair.Size is { } size ? $"hole {size.Text("mm", 1)}" : null,
                repair.FromMiddle is { } off ? $"reaches {off.Text("mm", 0)} from the middle" : null,
                repair.Lean is { } lean ? $"leans {Quantity.Number(lean.Degrees, 0)}°" : null,
                repair.Around is { } around ? $"{Quantity.Number(around.Degrees, 0)}° from the valve" : null,
                tyre?.History.Repairs is { } before ? before.Count == 0 ? "never repaired before" : string.Create(CultureInfo.InvariantCulture, $"{before.Count} earlier {(before.Count == 1 ? "repair" : "repairs")}{(repair.FromRepair is { } apart ? $", the nearest {apart.Text("mm", 0)} away" : "")}") : null),
            Joined(RepairRecord.KindWords.FirstOrDefault(w => w.Value == repair.Kind).Word, repair.Material, tyre?.History.PolicyText is { } maker ? $"tyre's maker: {maker}" : null),
            new(judged is null ? "not judged: no tyre is entered there"
                : refused ? $"refused: {string.Join(" ", judged.Verdict.Refused)}"
                : judged.Verdict.Missing.Count > 0 ? $"not entered: {string.Join(", ", judged.Verdict.Missing.Select(m => m.What))}"
                : "may be repaired", refused, refused ? SheetInk.MajorWord : null),
            Joined(
                content.State.Work.At(at, "repair-prepared")?.Word is { } prepared ? $"prepared: {prepared}" : null,
                content.State.Work.At(at, "repair-filled") is not null ? "filled from inside" : null,
                content.State.Work.At(at, "repair-sealed") is not null ? "patched and sealed from inside" : null,
                content.State.Work.At(at, "soap-test")?.Word is { } soap ? $"leak test: {soap}" : null,
                content.State.Work.At(at, "repair-marked")?.Word is { } marked ? $"marked: {marked}" : "not marked as done"),
        ];
    }

    private static string Joined(params string?[] parts) => string.Join(", ", parts.OfType<string>()) is { Length: > 0 } text ? text : "–";
}
