using System.Text.RegularExpressions;

namespace Trundle.Rules.Tests;

/// <summary>A test that asserts nothing proves nothing.</summary>
public sealed partial class TestsTests
{
    [Fact]
    public void Every_test_asserts_something()
    {
        var silent = House.Files("tests", "*.cs")
            .SelectMany(f => Bodies(f).Where(b => !Asserts().IsMatch(b.Body)).Select(b => $"{House.Short(f)}: {b.Name}"))
            .ToList();
        silent.ShouldBeEmpty();
    }

    [Fact]
    public void No_test_is_skipped_without_a_reason() =>
        House.Files("tests", "*.cs").SelectMany(f => SkipForm().Matches(File.ReadAllText(f)).Select(m => $"{House.Short(f)}: {m.Value}")).ShouldBeEmpty();

    /// <summary>Each test's text, from its attribute to the next attribute or the end.</summary>
    private static IEnumerable<(string Name, string Body)> Bodies(string file)
    {
        var text = File.ReadAllText(file);
        var starts = TestForm().Matches(text);
        for (var i = 0; i < starts.Count; i++)
        {
            var end = i + 1 < starts.Count ? starts[i + 1].Index : text.Length;
            var body = text[starts[i].Index..end];
            yield return (NameForm().Match(body).Groups["name"].Value, body);
        }
    }

    [GeneratedRegex(@"^\s*\[(?:Fact|Theory)\b", RegexOptions.Multiline)]
    private static partial Regex TestForm();

    [GeneratedRegex(@"(?:void|Task)\s+(?<name>\w+)\s*\(")]
    private static partial Regex NameForm();

    [GeneratedRegex(@"Should|Assert|Sample\(|Expect|\bHolds\w*\(|\b(?:Agree|Shows)\w*\(|\bCheck\w*\(")]
    private static partial Regex Asserts();

    [GeneratedRegex(@"Skip\s*=\s*""\s*""")]
    private static partial Regex SkipForm();
}
