namespace Trundle.Visits.Keeping;

/// <summary>Lines of a CSV file: every cell in quotes (RFC 4180).</summary>
public static class CsvLine
{
    /// <summary>One line with its end.</summary>
    public static string Of(params IReadOnlyList<string?> cells)
    {
        ArgumentNullException.ThrowIfNull(cells);
        return string.Join(',', cells.Select(Cell)) + "\r\n";
    }

    /// <summary>What somebody typed must not become a formula in a table program: such a text begins with an apostrophe.</summary>
    private static string Cell(string? text) =>
        $"\"{(text is ['=' or '+' or '-' or '@', ..] ? "'" : "")}{text?.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
}
