using PdfSharp.Drawing;
using Trundle.Engine.Findings;
using Trundle.Sheets.Drawing;
using Trundle.Sheets.Pictures;

namespace Trundle.Sheets;

/// <summary>One finding on the customer's page, or several of one kind: square and word, where and how much, and what to do.</summary>
/// <param name="Category">The category, or null for a line that is no finding.</param>
/// <param name="Facts">Where, measured, limit; a line each.</param>
/// <param name="Action">What to do.</param>
internal sealed record FindingLine(Category? Category, IReadOnlyList<string> Facts, string Action)
{
    private const double Indent = 14;

    /// <summary>The findings in order; those that ask for the same thing for the same reason stand together.</summary>
    public static IReadOnlyList<FindingLine> Of(SheetContent content, IEnumerable<Finding> findings) =>
        [.. findings.GroupBy(f => (f.Rule, f.Category, f.Action, (f.Limit?.Source ?? f.Source).ForPeople, Done: PutRight(content, f))).Select(alike => new FindingLine(
            alike.Key.Category,
            [.. alike.GroupBy(content.Fact, StringComparer.Ordinal).Select(same => $"{content.Places(same.Select(f => f.Position))}: {same.Key}")],
            $"{(alike.Key.Done ? "Put right on this visit. " : "")}{content.Units.InText(alike.Key.Action)} [{alike.Key.ForPeople}]"))];

    /// <summary>True where work was done and the vehicle leaves without a finding of this rule anywhere: wheels may have moved.</summary>
    private static bool PutRight(SheetContent content, Finding finding) =>
        content.State.Work.Steps.Count > 0 && !content.Leaving.Any(f => f.Rule == finding.Rule && f.Category > Engine.Findings.Category.None);

    /// <summary>The same with at most so many facts written out; how many more there are is said.</summary>
    public FindingLine Short(int most) => Facts.Count <= most ? this : this with
    {
        Facts = [.. Facts.Take(most), string.Create(System.Globalization.CultureInfo.InvariantCulture, $"… and {Facts.Count - most} more like it in the workshop's file.")],
    };

    public double Height(XGraphics g, double width, double size) =>
        Facts.Sum(f => SheetText.ParagraphHeight(g, f, width - Indent, size, true))
        + (Action.Length == 0 ? 0 : SheetText.ParagraphHeight(g, Words, width - Indent, size - 0.5))
        + (size * 0.4);

    public double Draw(XGraphics g, double x, double top, double width, double size)
    {
        if (Category is { } category)
        {
            SquarePicture.Draw(g, x, top + (size * 0.15), size, category);
        }

        var y = top;
        foreach (var fact in Facts)
        {
            y += SheetText.Paragraph(g, fact, x + Indent, y, width - Indent, size, SheetInk.Ink, true);
        }

        if (Action.Length > 0)
        {
            y += SheetText.Paragraph(g, Words, x + Indent, y, width - Indent, size - 0.5, SheetInk.Soft);
        }

        return y - top + (size * 0.4);
    }

    private string Words => Category is { } category ? $"{SquarePicture.Words(category)}: {Action}" : Action;
}
