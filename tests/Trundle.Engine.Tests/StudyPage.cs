using System.Security.Cryptography;
using System.Text;
using Trundle.Engine.Tests.Balance.Oracle.Why;

namespace Trundle.Engine.Tests;

/// <summary>
/// A page of docs/theory that holds a study over drawn cases: made anew where TRUNDLE_WRITE_DOCS is 1, and else checked to have been made from the inputs
/// of today.
/// </summary>
/// <param name="name">The page's file name.</param>
internal sealed class StudyPage(string name)
{
    private const string Begin = "<!-- study: made by a test, do not edit -->";
    private const string End = "<!-- end of study -->";
    private readonly string _page = Path.Combine(WhyPriors.Root, "docs", "theory", name);

    /// <summary>Writes the study where that is asked for, and holds the page against the inputs.</summary>
    /// <param name="fingerprint">Of the inputs, see <see cref="Fingerprint"/>.</param>
    /// <param name="study">Makes the study, which takes long.</param>
    public void ShouldBeMadeFrom(string fingerprint, Func<string> study)
    {
        if (Environment.GetEnvironmentVariable("TRUNDLE_WRITE_DOCS") == "1")
        {
            var text = File.ReadAllText(_page);
            var (begin, end) = (text.IndexOf(Begin, StringComparison.Ordinal), text.IndexOf(End, StringComparison.Ordinal));
            File.WriteAllText(_page, $"{text[..begin]}{Begin}\n{study()}{text[end..]}");
        }

        File.ReadAllText(_page).ShouldContain($"inputs {fingerprint}", Case.Sensitive, "Run this test with TRUNDLE_WRITE_DOCS=1 to make the study anew.");
    }

    /// <summary>Sixteen digits that change with any of the inputs.</summary>
    /// <param name="tables">The tables' text.</param>
    /// <param name="first">The first hundred cases as drawn and as answered, by their seed.</param>
    public static string Fingerprint(string tables, Func<int, string> first) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(
        tables + string.Concat(Enumerable.Range(1, 100).Select(seed => first(seed) + "\n")))))[..16];
}
