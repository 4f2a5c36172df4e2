using System.Text;
using System.Text.RegularExpressions;
using Trundle.Engine.Reference;
using Trundle.Measures;
using Trundle.Visits.Bay;
using Trundle.Visits.Files;

namespace Trundle.Visits.Procedures;

/// <summary>What a workshop's own sentence says against an act that keeps people whole.</summary>
/// <param name="Refused">True where it is refused; false where it is only warned of, since the words may be meant rightly.</param>
/// <param name="Code">The code of the problem.</param>
/// <param name="Message">What was read and what would be right.</param>
public sealed record AgainstAct(bool Refused, string Code, string Message);

/// <summary>
/// Reads a workshop's own words for those that drop or deny an act that keeps people whole (<c>protected-acts.json</c>), and for a pressure above the ceiling
/// for seating beads. It knows words and no meaning: what it passes may still be wrong, so the carried cautions stand at every step whatever a file says.
/// </summary>
public static partial class ProtectedActs
{
    /// <summary>The code of a sentence that drops or denies a protected act.</summary>
    public const string Denied = "safety-denied";

    /// <summary>The code of a pressure above the ceiling.</summary>
    public const string Pressure = "pressure-above-ceiling";

    private static readonly Table Words = Load();

    /// <summary>Everything that a text says against the protected acts, the first of each clause.</summary>
    /// <param name="text">A workshop's own words.</param>
    /// <param name="offTheCar">True at a step on the leg on which tyres are seated: there a pressure above the ceiling is refused, elsewhere warned of.</param>
    /// <source>the project's own list of words; the ceiling: US trade guidance, 40 psi (second-hand)</source>
    public static IEnumerable<AgainstAct> In(string text, bool offTheCar)
    {
        ArgumentNullException.ThrowIfNull(text);
        foreach (var clause in Clause().Split(text).Where(c => !string.IsNullOrWhiteSpace(c)))
        {
            if (Against(clause.Trim()) is { } found)
            {
                yield return found;
            }
        }

        var ceiling = Figures.Of("pressure.seating-guidance");
        foreach (Match match in PressureText().Matches(text))
        {
            if (Quantity.Read<GaugePressure>(match.Value, "kPa") is { IsRead: true } read && read.Value.Kilopascals > ceiling.As<GaugePressure>().Kilopascals + 1)
            {
                yield return new AgainstAct(offTheCar, Pressure, $"'{NumberText.Shown(match.Value)}' is above {ceiling.As<GaugePressure>().Text("kPa", 0)}, the published ceiling for seating beads ({ceiling.Source.ForPeople}). The step itself tells the limit that rules there and the pressure to set; leave the number out.");
            }
        }
    }

    private static AgainstAct? Against(string clause)
    {
        var said = Plain(clause);
        if (Words.Contrary.FirstOrDefault(a => a.Words.Any(w => Has(said, w))) is { Act: { } contrary } && !Words.Negations.Any(n => Has(said, n)))
        {
            return new AgainstAct(true, Denied, $"“{NumberText.Shown(clause)}” goes against {contrary}. The carried cautions stand at this step; leave this out.");
        }

        if (Words.Acts.FirstOrDefault(a => a.Words.Any(w => Has(said, w))) is not { Act: { } act })
        {
            return null;
        }

        // A phrase that drops it may itself hold a negation (not needed): what is left of the clause tells whether it is turned round once more (never skip it).
        var dropped = Words.Dropped.Where(d => Has(said, d)).ToList();
        var rest = dropped.OrderByDescending(d => d.Length).Aggregate(said, (s, d) => s.Replace(" " + Bare(d) + " ", " ", StringComparison.Ordinal));
        var negated = Words.Negations.Any(n => Has(rest, n));
        return dropped.Count > 0 && !negated ? new AgainstAct(true, Denied, $"“{NumberText.Shown(clause)}” drops {act}. No workshop's file does; leave this out, or say what you add to it.")
            : dropped.Count == 0 && negated ? new AgainstAct(false, Denied, $"“{NumberText.Shown(clause)}” speaks of {act} with a 'not': read it again, since nobody may read out of it that it is dropped. The carried cautions stand above it.")
            : null;
    }

    /// <summary>Lower case, only letters, digits and apostrophes, one space between words and at both ends.</summary>
    private static string Plain(string text)
    {
        var plain = new StringBuilder(" ");
        foreach (var c in text.ToLowerInvariant())
        {
            plain.Append(char.IsLetterOrDigit(c) || c == '\'' ? c : c == '’' ? '\'' : ' ');
        }

        return $" {string.Join(' ', plain.ToString().Split(' ', StringSplitOptions.RemoveEmptyEntries))} ";
    }

    private static string Bare(string phrase) => Plain(phrase).Trim();

    private static bool Has(string said, string phrase) => said.Contains(" " + Bare(phrase) + " ", StringComparison.Ordinal);

    private static Table Load()
    {
        using var stream = typeof(ProtectedActs).Assembly.GetManifestResourceStream("protected-acts.json") ?? throw new InvalidOperationException("The list of protected acts is not carried.");
        using var reader = new StreamReader(stream, Encoding.UTF8);
        var problems = new List<Problem>();
        var o = new FileObject(FileNode.Parse(reader.ReadToEnd(), "protected-acts.json").Value, problems);
        var table = new Table(Acts("acts"), o.Texts("dropped"), o.Texts("negations"), Acts("contrary"));
        o.Done();
        return problems.Count == 0 ? table : throw new InvalidOperationException($"protected-acts.json: {problems[0].Where}: {problems[0].Message}");

        List<(string Act, IReadOnlyList<string> Words)> Acts(string key) => [.. o.Objects(key).Select(a =>
        {
            var row = (a.Text("act")!, (IReadOnlyList<string>)[.. a.Texts("words")]);
            a.Done();
            return row;
        })];
    }

    [GeneratedRegex("[.,;:!?\\n()–—]+(?=\\s|$)|\\bbut\\b")]
    private static partial Regex Clause();

    [GeneratedRegex(@"\d+(?:[.,]\d+)?\s*(?:kPa|bar|psi)\b", RegexOptions.IgnoreCase)]
    private static partial Regex PressureText();

    private sealed record Table(
        IReadOnlyList<(string Act, IReadOnlyList<string> Words)> Acts, IReadOnlyList<string> Dropped, IReadOnlyList<string> Negations, IReadOnlyList<(string Act, IReadOnlyList<string> Words)> Contrary);
}
