using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using Trundle.Words;

namespace Trundle.Tests;

/// <summary>
/// A language that nobody speaks: every letter of the program's texts has a mark on it, and each text is longer by a third and stands in ⟦ ⟧. A word on a
/// page that is still plain comes either from what people typed, or past the texts.
/// </summary>
internal static partial class PseudoLocale
{
    private const string Plain = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ";
    private const string Marked = "áƀçđéƒǵĥíĵķłḿñóƥʠřšťúṽŵẋýžÁƁÇĐÉƑǴĤÍĴĶŁḾÑÓƤɊŘŠŤÚṼŴẊÝŽ";

    /// <summary>The forms of the program, from its list.</summary>
    public static IReadOnlyList<string> Forms { get; } = Read();

    /// <summary>Its texts.</summary>
    public static Texts Texts { get; } = new("qps-ploc", Forms, Said, date => Locales.DateOf("en-US")!(date) is { } said ? Said(said) : null);

    /// <summary>One form in it.</summary>
    public static string Said(string form)
    {
        var said = new StringBuilder("⟦");
        for (var i = 0; i < form.Length; i++)
        {
            if (form[i] == '{' && Hole().Match(form, i) is { Success: true } hole && hole.Index == i)
            {
                said.Append(hole.Value);
                i += hole.Length - 1;
            }
            else
            {
                var at = Plain.IndexOf(form[i], StringComparison.Ordinal);
                said.Append(at < 0 ? form[i] : Marked[at]);
            }
        }

        return said.Append('·', form.Length / 3).Append('⟧').ToString();
    }

    /// <summary>The plain words of a text that are neither typed by people nor a unit or a code.</summary>
    public static IEnumerable<string> Left(string text, IReadOnlySet<string> data) =>
        Word().Matches(Code().Replace(text, " ")).Select(m => m.Value).Where(w => !data.Contains(w) && !Symbols.Contains(w) && !w.Any(char.IsDigit) && !w.All(char.IsUpper));

    /// <summary>The words of texts that people typed.</summary>
    public static IReadOnlySet<string> WordsOf(IEnumerable<string> typed) => typed.SelectMany(t => Word().Matches(t)).Select(m => m.Value).ToHashSet(StringComparer.OrdinalIgnoreCase);

    private static readonly HashSet<string> Symbols = new(["kPa", "psi", "bar", "lbf", "min", "mph", "Trundle", "UTC", "nds", "rpm", "January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November", "December"], StringComparer.Ordinal);

    private static List<string> Read()
    {
        for (var at = new DirectoryInfo(AppContext.BaseDirectory); at is not null; at = at.Parent)
        {
            var file = Path.Combine(at.FullName, "src", "Trundle.Words", "texts", "en-GB.json");
            if (File.Exists(file))
            {
                using var json = JsonDocument.Parse(File.ReadAllText(file));
                return [.. json.RootElement.EnumerateObject().Select(p => p.Name)];
            }
        }

        throw new InvalidOperationException("The list of texts was not found above the test.");
    }

    /// <summary>The name of a rule or a field, in full.</summary>
    [GeneratedRegex(@"(?<![\p{L}\p{N}])[a-z][\w-]*(?:\.[\w-]+)+|[\w-]+/[\w./-]+", RegexOptions.CultureInvariant)]
    private static partial Regex Code();

    [GeneratedRegex(@"\{\d+\}")]
    private static partial Regex Hole();

    // A letter with a mark is no end of a word, so that no piece of a marked word is taken for a plain one.
    [GeneratedRegex(@"(?<![\p{L}\p{N}_])[A-Za-z0-9]*[A-Za-z]{3,}[A-Za-z0-9]*(?![\p{L}\p{N}_])", RegexOptions.CultureInvariant)]
    private static partial Regex Word();
}
