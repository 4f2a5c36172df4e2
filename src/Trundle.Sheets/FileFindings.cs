using Trundle.Engine.Findings;
using Trundle.Sheets.Drawing;
using Trundle.Sheets.Pictures;
using Trundle.Visits.Bay;

namespace Trundle.Sheets;

/// <summary>Every finding on the sheet for the file: first what is not in order, each with what to do, then what is; and what people decided.</summary>
internal static class FileFindings
{
    private const double Size = 6.9;

    public static void Write(SheetFlow flow, SheetContent content, string title, IReadOnlyList<Finding> findings)
    {
        flow.Heading(title);
        if (findings.Count == 0)
        {
            flow.Paragraph("Nothing was judged: the file holds too little.", SheetInk.Soft);
            return;
        }

        var broken = findings.Where(f => f.Category > Category.None).ToList();
        if (broken.Count == 0)
        {
            flow.Paragraph("Nothing that needs doing.", bold: true);
        }
        else
        {
            var said = new HashSet<string>(StringComparer.Ordinal);
            flow.Table([new("category", 1.2), new("where", 1), new("rule", 1.4), new("measured", 1.5), new("limit", 0.95), new("source and status", 1.8), new("what to do", 3)],
                Alike(content, broken).Select(f => (IReadOnlyList<Cell>)
                [
                    new(SquarePicture.Words(f.Finding.Category), f.Finding.Category >= Category.Major, SquarePicture.Color(f.Finding.Category), (g, x, y, side) => SquarePicture.Draw(g, x, y, side, f.Finding.Category)),
                    f.At,
                    f.Finding.Rule,
                    content.Said(f.Finding, f.Finding.Measured.Text),
                    f.Finding.Limit is null ? "–" : content.Limit(f.Finding),
                    SourceOf(f.Finding),
                    content.Units.InText(Action(f.Finding, said)),
                ]), Size);
        }

        var inOrder = findings.Where(f => f.Category == Category.None).OrderBy(f => f.Rule, StringComparer.Ordinal).ThenBy(f => f.Position, StringComparer.Ordinal).ToList();
        if (inOrder.Count == 0)
        {
            return;
        }

        var noted = new HashSet<string>(StringComparer.Ordinal);
        flow.SubHeading("In order: no deficiency");
        flow.Table([new("rule", 1.5), new("where", 1.2), new("measured", 2.4), new("limit", 1.1), new("source and status", 2.9), new("to note", 1.9)],
            Alike(content, inOrder).Select(f => (IReadOnlyList<Cell>)
            [
                f.Finding.Rule,
                f.At,
                content.Said(f.Finding, f.Finding.Measured.Text),
                f.Finding.Limit is null ? "–" : content.Limit(f.Finding),
                SourceOf(f.Finding),
                content.Units.InText(Action(f.Finding, noted) is var note && note.StartsWith(Plain, StringComparison.Ordinal) ? note[Plain.Length..].TrimStart() : note),
            ]), Size);
    }

    /// <summary>What people decided about findings, alike decisions together.</summary>
    public static void Decisions(SheetFlow flow, SheetContent content)
    {
        if (content.State.Work.Decisions.Count == 0)
        {
            return;
        }

        var findings = content.Found.Concat(content.Leaving).Concat(content.State.Legs.SelectMany(l => l.Findings)).GroupBy(VisitFindings.DecisionKey, StringComparer.Ordinal).ToDictionary(f => f.Key, f => f.First(), StringComparer.Ordinal);
        flow.Heading("Decisions");
        flow.Table([new("about", 2), new("decision", 3), new("by", 1.2), new("customer's signed refusal", 1.4)],
            content.State.Work.Decisions.OrderBy(d => d.Key, StringComparer.Ordinal)
                .Select(d => (d.Value, Finding: findings.GetValueOrDefault(d.Key), d.Key))
                .GroupBy(d => (d.Value, What: d.Finding is null ? d.Key : Name(d.Finding.Rule)))
                .Select(alike => (IReadOnlyList<Cell>)
                [
                    alike.Any(d => d.Finding?.Position is not null) ? $"{alike.Key.What}: {content.Places(alike.Select(d => d.Finding?.Position)).ToLowerInvariant()}" : alike.Key.What,
                    alike.Key.Value.Text, $"{alike.Key.Value.By}{(alike.Key.Value.Role is { } role ? $", {role.Word()}" : "")}", alike.Key.Value.SignedRefusal ?? "–",
                ]));
    }

    private const string Plain = "In order.";

    /// <summary>A rule's own name as a person reads it.</summary>
    private static string Name(string rule) => rule.Replace('.', ' ').Replace('-', ' ');

    /// <summary>Findings that say the same of several places stand in one row.</summary>
    private static IEnumerable<(Finding Finding, string At)> Alike(SheetContent content, IEnumerable<Finding> findings) =>
        findings.GroupBy(f => f with { Position = null, Cautions = [] }).Select(alike => (alike.First(), Places(content, [.. alike])));

    /// <summary>What to do, with the cautions that no row above has said yet.</summary>
    private static string Action(Finding finding, HashSet<string> said)
    {
        var first = finding.Cautions.Where(said.Add).ToList();
        var again = first.Count < finding.Cautions.Count;
        return string.Join(" ", first.Select(c => $"Caution: {c}").Prepend(finding.Action).Concat(again ? ["Caution as above."] : []));
    }

    /// <summary>One place in words; several as codes.</summary>
    private static string Places(SheetContent content, IReadOnlyList<Finding> alike) =>
        alike.Count == 1 ? content.At(alike[0].Position) : string.Join(" ", alike.Select(f => f.Position ?? "vehicle").Distinct(StringComparer.Ordinal)) is var all && all.Contains("axle", StringComparison.Ordinal) ? all.Replace(" axle", ", axle", StringComparison.Ordinal) : all;

    /// <summary>The limit's source where there is a limit, else the rule's; with its status.</summary>
    private static string SourceOf(Finding finding)
    {
        var source = finding.Limit?.Source ?? finding.Source;
        return $"{source.Text} ({source.StatusText})";
    }
}
