using Trundle.Measures;
using Trundle.Visits.Bay;

namespace Trundle.Visits.Procedures;

/// <summary>Takes out of a step of a file that is kept, such as a visit's, what it says against the safety words.</summary>
internal static class KeptWords
{
    /// <summary>The codes of what is taken out rather than refused.</summary>
    public static IReadOnlyList<string> Codes { get; } = ["safety-words-stay", "caution-reworded", "words-hold-everywhere", "hold-point-stays", "machine-stays", ProtectedActs.Denied, ProtectedActs.Pressure];

    private const string NotShown = "The workshop's own words stood against a caution of the carried procedure and are not shown.";

    /// <summary>The step without those words, with a caution that tells of it; the same step where it says nothing against them.</summary>
    /// <param name="part">What the file says of a step.</param>
    /// <param name="leftOut">Gathers a sentence for each step from which something was taken.</param>
    public static PartStep Without(PartStep part, List<string> leftOut)
    {
        var against = WorkshopProcedure.AgainstSafety(part);
        if (against.Count == 0)
        {
            return part;
        }

        var keys = against.Select(p => p.Where[(part.Path.Length == 0 ? 0 : part.Path.Length + 1)..]).ToHashSet(StringComparer.Ordinal);
        var isNew = Procedure.BuiltIn.Find(part.Id) is null;
        var everywhere = keys.Contains("when");
        string? Kept(string key, string? text) => !keys.Contains(key) && !everywhere ? text : isNew && key is "title" or "text" ? key == "title" ? part.Id : NotShown : null;
        var told = $"Words of the workshop's own procedure are left out at '{Procedure.BuiltIn.Find(part.Id)?.Title ?? part.Id}' ({string.Join(", ", keys.Order(StringComparer.Ordinal))}): they stood against a safety word. The carried words stand.";
        leftOut.Add(told);
        return part with
        {
            Title = Kept("title", part.Title),
            Text = Kept("text", part.Text),
            Why = Kept("why", part.Why),
            Stop = Kept("stop", part.Stop),
            Also = Sentences("also", part.Also),
            Cautions = [.. Sentences("cautions", part.Cautions), new StepSentence(told, [])],
            Tools = [.. part.Tools.Where((_, i) => !keys.Contains(Index("tools", i)))],
            HoldPoint = keys.Contains("hold") ? null : part.HoldPoint,
            AtMachine = keys.Contains("machine") ? null : part.AtMachine,
        };

        List<StepSentence> Sentences(string key, IReadOnlyList<StepSentence> all) => [.. all.Where((_, i) => !keys.Contains(Index(key, i)))];
    }

    private static string Index(string key, int i) => FormattableString.Invariant($"{key}[{i}]");
}
