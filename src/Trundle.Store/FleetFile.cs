using System.Globalization;
using System.Text;
using CsvHelper;
using CsvHelper.Configuration;
using Trundle.Measures;
using Trundle.Visits.Fleet;

namespace Trundle.Store;

/// <summary>Reads a fleet's list from a table in text: commas or semicolons between the cells, quotes as in RFC 4180.</summary>
public static class FleetFile
{
    /// <summary>The vehicles of a list, or the problems with the line and the column of each; never both.</summary>
    /// <param name="bytes">The file, in UTF-8.</param>
    public static (IReadOnlyList<FleetVehicle> Vehicles, IReadOnlyList<Problem> Problems) Read(ReadOnlyMemory<byte> bytes)
    {
        string text;
        try
        {
            text = new UTF8Encoding(false, true).GetString(bytes.Span).TrimStart('\uFEFF');
        }
        catch (DecoderFallbackException)
        {
            return ([], [new Problem("line 1", "not-utf-8", "The file is not written in UTF-8; save the table as CSV in UTF-8.")]);
        }

        var problems = new List<Problem>();
        var lines = Lines(text, problems);
        if (problems.Count == 0 && lines.Count == 0)
        {
            problems.Add(new Problem("line 1", "no-lines", "The file is empty; its first line names the columns."));
        }

        var vehicles = problems.Count > 0 ? [] : FleetList.Read(lines[0], lines[1..], problems);
        return problems.Count > 0 ? ([], problems) : (vehicles, problems);
    }

    private static List<FleetLine> Lines(string text, List<Problem> problems)
    {
        var first = text.AsSpan(0, text.AsSpan().IndexOfAny('\r', '\n') is >= 0 and var end ? end : text.Length);
        var configuration = new CsvConfiguration(CultureInfo.InvariantCulture)
        {
            Delimiter = first.Count(';') > first.Count(',') ? ";" : ",",
            HasHeaderRecord = false,
            BadDataFound = bad => problems.Add(new Problem(At(bad.Context.Parser!.RawRow), "cell-unreadable", "A quote stands where none may: put the whole cell into quotes, and write a quote inside it twice.")),
        };
        using var reader = new StringReader(text);
        using var parser = new CsvParser(reader, configuration);
        var lines = new List<FleetLine>();
        while (lines.Count <= FleetList.Most + 1 && parser.Read())
        {
            lines.Add(new FleetLine(parser.RawRow, parser.Record ?? []));
        }

        return lines;
    }

    private static string At(int line) => string.Create(CultureInfo.InvariantCulture, $"line {line}");
}
