using Trundle.Engine.Findings;
using Trundle.Visits.Operations;

namespace Trundle.Visits.Tests.Operations;

public sealed class FromMemoryLinesTests
{
    [Fact]
    public void A_limit_from_memory_is_said_so_whatever_the_status_of_its_rule()
    {
        foreach (var rule in new[] { Source.CommonPractice, new Source("A text", SourceStatus.Read), new Source("UN R30 3.x", SourceStatus.FromMemory) })
        {
            var limit = new Limit(Amount.Number(1.6, "mm", 1), new Source("UN R30 3.x", SourceStatus.FromMemory));
            var lines = string.Join('\n', AnswerJson.Lines([new Finding("tread.depth", Category.Major, "1L", Amount.Number(1.5, "mm", 1), limit, rule, "Replace this tyre.")]));
            lines.ShouldContain("1.6 mm");
            lines.ShouldContain("UN R30 3.x (from memory, not checked against the text)");
        }
    }

    [Fact]
    public void The_same_text_is_not_said_twice()
    {
        var law = new Source("SI 1986/1078, reg. 27", SourceStatus.SecondHand);
        var lines = string.Join('\n', AnswerJson.Lines([new Finding("tread.depth", Category.Major, "1L", Amount.Number(1.5, "mm", 1), new Limit(Amount.Number(1.6, "mm", 1), law), law, "Replace this tyre.")]));
        lines.Split("SI 1986/1078").Length.ShouldBe(2);
    }
}
