using Trundle.Engine.Reference;
using Trundle.Measures;

namespace Trundle.Engine.Complaint;

/// <summary>Two things said of a complaint that cannot both be so.</summary>
/// <param name="Key">The key of the one at which it is said: a question, or <c>at</c>.</param>
/// <param name="Said">What stands there, as a person reads it.</param>
/// <param name="Other">The question that it goes against.</param>
/// <param name="OtherSaid">What stands there.</param>
/// <param name="Why">Why both cannot be so.</param>
public sealed record ComplaintContradiction(string Key, string Said, string Other, string OtherSaid, string Why)
{
    /// <summary>The key of the speed at which it is worst.</summary>
    public const string At = "at";

    private const string SpeedQuestion = "speed";

    private static readonly List<(string Question, string Answer, string Other, string[] Against, string Why)> Table = Load();

    /// <summary>The first contradiction in what was said, or null where all of it can be so together.</summary>
    /// <param name="detail">What the driver says.</param>
    /// <source><c>complaint_contradictions.csv</c>: by the meaning of the words; speeds by the ranges of the answers with <c>complaint.speed-slack</c> (own choice)</source>
    public static ComplaintContradiction? In(ComplaintDetail detail)
    {
        ArgumentNullException.ThrowIfNull(detail);
        foreach (var (question, answer, other, against, why) in Table)
        {
            if (detail.Given.GetValueOrDefault(question) == answer && detail.Given.GetValueOrDefault(other) is { } there && against.Contains(there))
            {
                return new ComplaintContradiction(question, Words(question, answer), other, Words(other, there), why);
            }
        }

        return detail.At is { } at ? OfSpeed(detail.Given, at) : null;
    }

    /// <summary>The speed at which it is worst against the range that was answered; a sway at walking pace is of low speed.</summary>
    private static ComplaintContradiction? OfSpeed(IReadOnlyDictionary<string, string> given, Speed at)
    {
        var slack = Figures.Of("complaint.speed-slack").As<Speed>();
        var (low, middle) = (Figures.Of("complaint.low-speed").As<Speed>(), Figures.Of("complaint.middle-speed").As<Speed>());
        if (given.GetValueOrDefault(SpeedQuestion) is { } range)
        {
            var outside = range switch
            {
                "low" => at > low + slack,
                "middle" => at < low - slack || at > middle + slack,
                "band" or "rising" => at < middle - slack,
                _ => false,
            };
            return outside ? new ComplaintContradiction(At, at.Text("km/h", 0), SpeedQuestion, Words(SpeedQuestion, range), "the speed at which it is worst lies outside that range") : null;
        }

        return given.GetValueOrDefault("kind") == "waddle" && at > low + slack
            ? new ComplaintContradiction(At, at.Text("km/h", 0), "kind", Words("kind", "waddle"), "walking pace is far slower")
            : null;
    }

    private static string Words(string question, string answer) => ComplaintTable.Questions.First(q => q.Key == question).Choices.First(c => c.Key == answer).Text;

    private static List<(string, string, string, string[], string)> Load()
    {
        var table = CsvTable.Embedded("complaint_contradictions.csv");
        return [.. table.Rows.Select(r => (table.Cell(r, "question"), table.Cell(r, "answer"), table.Cell(r, "other"), table.Cell(r, "goes_against").Split(' '), table.Cell(r, "why")))];
    }
}
