using Trundle.Visits.Files;

namespace Trundle.Visits.Tests.Files;

/// <summary>A file that is not JSON is refused with its line and column and in our own words, never the parser's.</summary>
public sealed class JsonFaultTests
{
    [Theory]
    [InlineData("{\"a\":1,}", "f:1:8", "A comma stands before this '}' and nothing behind it; take the comma out.")]
    [InlineData("{\n \"é\": [1,\n],\n}", "f:3:1", "A comma stands before this ']'")]
    [InlineData("{\"é\":1,}", "f:1:8", "A comma stands before this '}'")]
    [InlineData("{\"a\":1, // why\n \"b\":2}", "f:1:9", "A comment stands here, and JSON has none; take it out.")]
    [InlineData("{\"a\":1 /* why */}", "f:1:8", "A comment stands here")]
    [InlineData("// why\n{\"a\":1}", "f:1:1", "A comment stands here")]
    [InlineData("{\"a\":1 \"b\":2}", "f:1:8", "A comma or the closing '}' is missing before")]
    [InlineData("{\"a\":5 kg}", "f:1:8", "A quantity with its unit stands in double quotes")]
    [InlineData("{\"a\" 1}", "f:1:6", "A colon is missing")]
    [InlineData("{a:1}", "f:1:2", "a key in double quotes; 'a' was read")]
    [InlineData("{\"a\":'x'}", "f:1:6", "''x'' was read; a text, and a quantity with its unit, stands in double quotes")]
    [InlineData("{\"a\":1.}", "f:1:8", "'1.' was read")]
    [InlineData("{\"a\":007}", "f:1:7", "'007' was read")]
    [InlineData("{\"a\":tru}", "f:1:9", "'tru' was read")]
    [InlineData("{\"a\":NaN}", "f:1:6", "'NaN' was read")]
    [InlineData("{\"a\":,}", "f:1:6", "Nothing stands before this comma")]
    [InlineData("{\"a\":}", "f:1:6", "The value is missing before this '}'")]
    [InlineData("{\"a\":[1}", "f:1:8", "This '}' closes nothing that is open; the last that is open is '['.")]
    [InlineData("{\"a\":1]", "f:1:7", "This ']' closes nothing that is open")]
    [InlineData("{\"a\":1} x", "f:1:9", "The file goes on behind its last bracket")]
    [InlineData("{\"a\":[1,2", "f:1:10", "The file ends before its last ']'; was it cut off?")]
    [InlineData("{\"a\":\"x", "f:1:8", "A text is not closed")]
    [InlineData("{\"a\":\"x\ny\"}", "f:1:8", "A text goes on to the next line")]
    [InlineData("{\"a\":\"x\ty\"}", "f:1:8", "A tab or another control character")]
    [InlineData("{\"a\":\"C:\\x\"}", "f:1:10", "A backslash in a text is written twice")]
    [InlineData("hello", "f:1:1", "one JSON object in braces")]
    public void What_stands_there_and_what_should_is_said_in_our_own_words(string text, string where, string words)
    {
        var problem = FileNode.Parse(text, "f").Problem.ShouldNotBeNull();
        problem.Code.ShouldBe("json-syntax");
        problem.Where.ShouldBe(where);
        problem.Message.ShouldContain(words);
        problem.Message.ShouldNotContain("reader options");
    }

    /// <summary>Whatever one character is taken out, put in or cut, there is one sentence of one line, and none of the parser's words.</summary>
    [Fact]
    public void Every_spoilt_file_gets_one_line()
    {
        const string sound = "{\"a\": [1, -2.5e3, \"x\\\"é\"], \"b\": {\"c\": true, \"d\": null}}";
        const string put = "{}[],:\"'/\\x9.-\t\n";
        var refused = 0;
        for (var at = 0; at <= sound.Length; at++)
        {
            Check(sound[..at]);
            foreach (var c in put)
            {
                Check(sound.Insert(at, c.ToString()));
            }

            if (at < sound.Length)
            {
                Check(sound.Remove(at, 1));
            }
        }

        refused.ShouldBeGreaterThan(500);

        void Check(string text)
        {
            if (FileNode.Parse(text, "f").Problem is { Code: "json-syntax" } problem)
            {
                refused++;
                problem.Message.ShouldStartWith("The file is not JSON here. ");
                problem.Message.Length.ShouldBeLessThan(300, text);
                problem.Message.ShouldNotContain("\n");
                problem.Message.ShouldNotContain("invalid", Case.Insensitive, text);
            }
        }
    }
}
