namespace Trundle.Measures;

/// <summary>The words that could stand in a place, as a message lists them.</summary>
public static class ChoiceText
{
    /// <summary>Each word in quotes, since a word may hold a comma itself: "'a4' or 'letter'".</summary>
    /// <param name="words">The words; at least one.</param>
    /// <param name="joined">What stands before the last: "or" where one is to be chosen, "and" where all are there.</param>
    public static string Of(IEnumerable<string> words, string joined = "or")
    {
        var quoted = words.Select(w => $"'{NumberText.Shown(w)}'").ToList();
        return quoted.Count < 2 ? string.Concat(quoted) : $"{string.Join(", ", quoted[..^1])} {joined} {quoted[^1]}";
    }
}
