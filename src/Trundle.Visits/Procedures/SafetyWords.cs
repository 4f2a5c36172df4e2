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

    /// <summary>The same share where the caution stands at another step: two cautions of different steps may be near each other, and a step's own words are more often like another's.</summary>
    private const double SameElsewhereFrom = 0.75;

    private const int FewestInCommonElsewhere = 6;

    private static readonly List<string> Carried = [.. Procedure.BuiltIn.Steps.SelectMany(s => s.Cautions.Concat(s.Also).Select(c => c.Text).Append(s.Text).Concat(s.Stop is { } stop ? [stop] : [])).Distinct(StringComparer.Ordinal)];

    private static readonly List<string> CarriedCautions = [.. Procedure.BuiltIn.Steps.SelectMany(s => s.Cautions).Select(c => c.Text).Distinct(StringComparer.Ordinal)];

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
                    problems.Add(SafetyWords.Reworded(string.Create(CultureInfo.InvariantCulture, $"{part.Path}.{key}[{index}]"), sentence, carried));
                }
            }
        }
    }

    /// <summary>Gathers what a file says at any step, its own too, that is a caution of another carried step reworded.</summary>
    /// <param name="part">What the file says of a step.</param>
    /// <param name="problems">Gathers each, with its place.</param>
    public static void NotElsewhere(PartStep part, List<Problem> problems)
    {
        ArgumentNullException.ThrowIfNull(part);
        ArgumentNullException.ThrowIfNull(problems);
        var own = part.Cautions.Select((c, i) => (c.Text, Key: string.Create(CultureInfo.InvariantCulture, $"cautions[{i}]")))
            .Concat(part.Also.Select((c, i) => (c.Text, Key: string.Create(CultureInfo.InvariantCulture, $"also[{i}]")))).ToList();
        foreach (var (sentence, key) in own.Where(o => !Carried.Contains(o.Text) && !problems.Exists(p => p.Where == $"{part.Path}.{o.Key}")))
        {
            if (CarriedCautions.Find(c => Common(c, sentence) is var (common, fewest) && common >= FewestInCommonElsewhere && common >= SameElsewhereFrom * fewest) is { } carried)
            {
                problems.Add(Reworded($"{part.Path}.{key}", sentence, carried));
            }
        }
    }

    /// <summary>Gathers what a file's own words say against an act that keeps people whole, or of a pressure above the ceiling: see <see cref="ProtectedActs"/>.</summary>
    /// <param name="there">The carried step, or null for one of the file's own.</param>
    /// <param name="leg">On which leg the step stands.</param>
    /// <param name="part">What the file says of it.</param>
    /// <param name="problems">Gathers what is refused, each with its place.</param>
    /// <param name="warnings">Gathers what is to be read again, each with its place.</param>
    public static void NotDenied(ProcedureStep? there, Leg? leg, PartStep part, List<Problem> problems, List<Problem> warnings)
    {
        ArgumentNullException.ThrowIfNull(part);
        ArgumentNullException.ThrowIfNull(problems);
        ArgumentNullException.ThrowIfNull(warnings);
        One("title", part.Title, there?.Title);
        One("text", part.Text, there?.Text);
        One("why", part.Why, there?.Why);
        One("stop", part.Stop, there?.Stop);
        Each("also", part.Also.Select(s => s.Text));
        Each("cautions", part.Cautions.Select(s => s.Text));
        Each("tools", part.Tools);
        Each("choices", part.Choices);

        void Each(string key, IEnumerable<string> own)
        {
            foreach (var (text, i) in own.Select((t, i) => (t, i)))
            {
                One(string.Create(CultureInfo.InvariantCulture, $"{key}[{i}]"), text, null);
            }
        }

        void One(string key, string? own, string? carried)
        {
            var where = $"{part.Path}.{key}";
            if (own is null || own == carried || Carried.Contains(own) || there?.Tools.Contains(own) == true || there?.Choices.Contains(own) == true || problems.Exists(p => p.Where == where))
            {
                return;
            }

            var added = carried is not null && AddsTo(carried, own) ? own[carried.Length..] : own;
            var found = ProtectedActs.In(added, leg == Leg.OffTheCar).OrderByDescending(a => a.Refused).FirstOrDefault();
            if (found is not null)
            {
                (found.Refused ? problems : warnings).Add(new Problem(where, found.Code, found.Message));
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
        var (common, fewest) = Common(carried, own);
        return common >= SameFrom * fewest && common >= FewestInCommon;
    }

    /// <summary>How many telling words two sentences have in common, and how many the shorter has.</summary>
    private static (int Common, int Fewest) Common(string carried, string own)
    {
        var (a, b) = (Words(carried), Words(own));
        return (a.GroupBy(w => w, StringComparer.Ordinal).Sum(g => Math.Min(g.Count(), b.Count(w => w == g.Key))), Math.Min(a.Count, b.Count));
    }

    private static Problem Reworded(string where, string sentence, string carried) =>
        new(where, "caution-reworded", $"This is a caution of the carried procedure in other words: “{NumberText.Shown(sentence)}”. It stays word for word: “{carried}” Leave yours out, or write only what you add.");

    /// <summary>The words that tell one sentence from another: those of four letters and more, since the short ones stand in all.</summary>
    private static List<string> Words(string sentence) =>
        [.. new string([.. sentence.ToLowerInvariant().Select(c => char.IsLetterOrDigit(c) ? c : ' ')]).Split(' ', StringSplitOptions.RemoveEmptyEntries).Where(w => w.Length >= 4)];
}
