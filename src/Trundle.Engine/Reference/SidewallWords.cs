using Trundle.Engine.Findings;

namespace Trundle.Engine.Reference;

/// <summary>A word or mark on a sidewall.</summary>
/// <param name="Word">In one spelling.</param>
/// <param name="Spellings">Every spelling that is read, upper case.</param>
/// <param name="Meaning">What it means, in a sentence.</param>
/// <param name="Caution">What it forbids or asks for, or null.</param>
/// <param name="Source">Where the meaning comes from.</param>
public sealed record SidewallWord(string Word, IReadOnlyList<string> Spellings, string Meaning, string? Caution, Source Source);

/// <summary>One spelling of a word.</summary>
internal sealed record SpelledWord(string Spelling, SidewallWord Word);

/// <summary>The words and marks that a sidewall carries beside size and service description.</summary>
public static class SidewallWords
{
    /// <summary>Every word.</summary>
    public static IReadOnlyList<SidewallWord> List { get; } = Load();

    /// <summary>Every spelling with its word, longest first, so that the first that fits is the whole word.</summary>
    internal static IReadOnlyList<SpelledWord> Spellings { get; } =
    [
        .. List.SelectMany(w => w.Spellings.Select(s => new SpelledWord(s, w)))
            .OrderByDescending(p => p.Spelling.Length).ThenBy(p => p.Spelling, StringComparer.Ordinal),
    ];

    /// <summary>The word of a spelling, in any case, or null where it is not known.</summary>
    /// <source>each row of the table names its own</source>
    public static SidewallWord? Of(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var typed = string.Join(' ', text.ToUpperInvariant().Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        return Spellings.FirstOrDefault(p => p.Spelling == typed)?.Word;
    }

    private static List<SidewallWord> Load()
    {
        var table = CsvTable.Embedded("sidewall_words.csv");
        return
        [
            .. table.Rows.Select(row => new SidewallWord(
                table.Cell(row, "word"),
                table.Cell(row, "spellings").Split('|'),
                table.Cell(row, "meaning"),
                table.Cell(row, "caution") is { Length: > 0 } caution ? caution : null,
                new Source(table.Cell(row, "source"), Source.StatusOf(table.Cell(row, "status"))!.Value))),
        ];
    }
}
