using Trundle.Engine.Instruments;
using Trundle.Sheets.Drawing;
using Trundle.Visits.Bay;
using Trundle.Visits.Instruments;

namespace Trundle.Sheets;

/// <summary>The instruments that were used on the visit, each with its record as it stood then.</summary>
internal static class FileInstruments
{
    public static void Write(SheetFlow flow, SheetContent content)
    {
        var used = content.State.Work.Instruments;
        if (used.Count == 0)
        {
            return;
        }

        flow.Heading("Instruments used");
        flow.Table([new("what", 1.4), new("name", 1.8), new("last check", 1.3), new("it said", 1.1), new("next due", 1.3), new("on this visit", 2.8)],
            used.Select(u =>
            {
                var finding = InstrumentFindings.Of([u], content.State.Arrived.Date).FirstOrDefault();
                return (IReadOnlyList<Cell>)
                [
                    u.Use.Kind.Word(),
                    u.Name,
                    u.Checked is { } on ? Day(on) : "–",
                    u.Recorded ? (u.Verdict ?? InstrumentVerdict.NotJudged).ForPeople() : "–",
                    u.Due is { } due ? Day(due) : "–",
                    finding is null ? u.Recorded ? "in order" : "its record was not taken over" : new Cell($"{finding.Measured.Text}", true, SheetInk.MajorWord),
                ];
            }));
    }

    private static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);
}
