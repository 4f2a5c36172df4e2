using System.Globalization;
using System.Text;
using Trundle.Visits.Bay;

namespace Trundle.Rules.Tests;

/// <summary>The page that says who may do what is made from the table that the program goes by.</summary>
public sealed class RightsPageTests
{
    [Fact]
    public void The_page_has_every_right_and_every_role()
    {
        var page = Page();
        MadePage.Holds("who-may-do-what.md", page);
        page.ShouldContain("| hand a vehicle back, with a signature | – | yes | yes | – | yes |");
    }

    private static string Page()
    {
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"""
            # Who may do what

            Made from the program's own table by a test; do not edit. Everybody who is signed in may read everything but the roll of
            others: attempts are read by whoever made them and by whoever may decide them. Each line is tried by each role in a
            test where the program holds it. Nobody lets a rim of several pieces go, a tyre or wheel that is condemned, or a vehicle whose fixings are not finally tightened.
            How people sign in is in [signing in](guide/signing-in.md).

            | may | {string.Join(" | ", RoleWords.All.Select(r => r.Word()))} |
            | --- | {string.Join(" | ", RoleWords.All.Select(_ => "---"))} |

            """);
        foreach (var (_, words, roles) in Rights.All)
        {
            text.Append(CultureInfo.InvariantCulture, $"| {MadePage.Cell(words)} | {string.Join(" | ", RoleWords.All.Select(r => roles.Contains(r) ? "yes" : "–"))} |\n");
        }

        return text.ToString();
    }
}
