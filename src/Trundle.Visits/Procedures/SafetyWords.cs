using System.Globalization;
using Trundle.Measures;
using Trundle.Visits.Bay;
using Trundle.Visits.Files;

namespace Trundle.Visits.Procedures;

/// <summary>
/// The words of the carried procedure that no workshop's file rewords: title, what to do and tools of a hold point, what stops any step, and every
/// caution. A file may write more behind them. No program can tell whether other words mean the same; so the carried ones stand as they are written.
/// </summary>
public static class SafetyWords
{
    /// <summary>From this share of telling words in common a sentence is a carried one reworded. Two sentences of the carried procedure stay below it (a test holds that); own choice.</summary>
    public const double SameFrom = 0.6;

    private const int FewestInCommon = 3;

    /// <summary>Gathers what a file's step rewords of the safety words of a carried one.</summary>
    /// <param name="there">The carried step.</param>
    /// <param name="part">What the file says of it.</param>
    /// <param name="problems">Gathers each, with its place.</param>
    public static void Held(ProcedureStep there, PartStep part, List<Problem> problems)
    {
        ArgumentNullException.ThrowIfNull(there);
        ArgumentNullException.ThrowIfNull(part);
        ArgumentNullException.ThrowIfNull(problems);
        if (there.HoldPoint && part.Title is { } title && title != there.Title)
        {
            problems.Add(new Problem($"{part.Path}.title", "safety-words-stay", $"'{there.Id}' is a hold point of the carried procedure and keeps its title, “{there.Title}”. Leave 'title' out, and say what you add in 'also' or 'cautions'."));
        }

        Keeps("text", there.HoldPoint ? there.Text : null, part.Text, "What to do at a hold point");
        Keeps("stop", there.Stop, part.Stop, "What stops a carried step");
        Reworded("cautions", part.Cautions);
        Reworded("also", part.Also);

        void Keeps(string key, string? carried, string? own, string what)
        {
            if (carried is not null && own is not null && own != carried && !AddsTo(carried, own))
            {
                problems.Add(new Problem($"{part.Path}.{key}", "safety-words-stay", $"{what} stays word for word; '{there.Id}' says: “{carried}” Leave '{key}' out, or begin with these words and write behind them what you add."));
            }
        }

        void Reworded(string key, IReadOnlyList<StepSentence> own)
        {
            var standing = there.Cautions.Concat(there.Also).Select(s => s.Text).Append(there.Text).Concat(there.Stop is { } stop ? [stop] : []).ToList();
            foreach (var (sentence, index) in own.Select((s, i) => (s.Text, i)).Where(s => !standing.Contains(s.Text)))
            {
                if (there.Cautions.Select(c => c.Text).FirstOrDefault(c => IsReworded(c, sentence)) is { } carried)
                {
                    problems.Add(new Problem(string.Create(CultureInfo.InvariantCulture, $"{part.Path}.{key}[{index}]"), "caution-reworded", $"This is a caution of the carried procedure in other words: “{NumberText.Shown(sentence)}”. It stays word for word: “{carried}” Leave yours out, or write only what you add."));
                }
            }
        }
    }

    /// <summary>True where own words begin with the carried ones, unchanged, and more sentences follow.</summary>
    public static bool AddsTo(string carried, string own)
    {
        ArgumentNullException.ThrowIfNull(carried);
        ArgumentNullException.ThrowIfNull(own);
        return own.StartsWith(carried, StringComparison.Ordinal) && own.Length > carried.Length && char.IsWhiteSpace(own[carried.Length]);
    }

    /// <summary>The tools of a step: at a hold point those of the file behind the carried ones, elsewhere those of the file where it names any.</summary>
    public static IReadOnlyList<string> Tools(ProcedureStep there, IReadOnlyList<string> own)
    {
        ArgumentNullException.ThrowIfNull(there);
        ArgumentNullException.ThrowIfNull(own);
        return own.Count == 0 ? there.Tools : there.HoldPoint ? [.. there.Tools, .. own.Except(there.Tools, StringComparer.Ordinal)] : own;
    }

    /// <summary>True where two sentences have so many telling words in common that one is the other reworded.</summary>
    public static bool IsReworded(string carried, string own)
    {
        ArgumentNullException.ThrowIfNull(carried);
        ArgumentNullException.ThrowIfNull(own);
        var (a, b) = (Words(carried), Words(own));
        var common = a.GroupBy(w => w, StringComparer.Ordinal).Sum(g => Math.Min(g.Count(), b.Count(w => w == g.Key)));
        return common >= SameFrom * Math.Min(a.Count, b.Count) && common >= FewestInCommon;
    }

    /// <summary>The words that tell one sentence from another: those of four letters and more, since the short ones stand in all.</summary>
    private static List<string> Words(string sentence) =>
        [.. new string([.. sentence.ToLowerInvariant().Select(c => char.IsLetterOrDigit(c) ? c : ' ')]).Split(' ', StringSplitOptions.RemoveEmptyEntries).Where(w => w.Length >= 4)];
}
