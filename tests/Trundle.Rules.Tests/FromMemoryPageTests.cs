using System.Text;
using Trundle.Engine.Findings;
using Trundle.Engine.Reference;

namespace Trundle.Rules.Tests;

/// <summary>The page that lists every figure from memory is made from the data, and is up to date.</summary>
public sealed class FromMemoryPageTests
{
    [Fact]
    public void The_page_lists_every_figure_from_memory()
    {
        var page = Page();
        MadePage.Holds("figures-from-memory.md", page);
        page.ShouldContain("| load_index.csv |");
    }

    private static string Page()
    {
        var text = new StringBuilder();
        text.Append("""
            # Figures from memory

            Made from the data by a test; do not edit. Each figure below is carried with the status *from memory, not checked against the text*, and
            the page and the sheet say so wherever it is shown. To check one: read the text that it names, correct the value where it is wrong, and set
            its status to `read` in the file that holds it. No code changes.

            ## Single figures

            | key | value | what | said to be in |
            | --- | --- | --- | --- |

            """);
        foreach (var f in Figures.List.Where(f => f.Source.Status == SourceStatus.FromMemory))
        {
            text.Append(System.Globalization.CultureInfo.InvariantCulture, $"| `{f.Key}` | {f.Value} {f.Unit} | {MadePage.Cell(f.What)} | {MadePage.Cell(f.Source.Text)} |\n");
        }

        text.Append("\n## Tables\n\n| table | row | said to be in |\n| --- | --- | --- |\n");
        foreach (var (table, row, source) in EmbeddedTables.FromMemory())
        {
            text.Append(System.Globalization.CultureInfo.InvariantCulture, $"| {table} | {MadePage.Cell(row)} | {MadePage.Cell(source)} |\n");
        }

        return text.ToString();
    }
}
