using System.Globalization;
using Trundle.Measures;

namespace Trundle.Visits.Files.Spin;

/// <summary>A table of numbers under one row of names, with notes before it.</summary>
/// <param name="Notes">Lines <c># key: value</c> before the names.</param>
/// <param name="Names">The names of the columns.</param>
/// <param name="Columns">One list of numbers a column, equally long.</param>
/// <param name="FirstLine">The line of the first row of numbers, from 1.</param>
internal sealed record SpinTable(IReadOnlyList<(string Key, string Value, int Line)> Notes, IReadOnlyList<string> Names, IReadOnlyList<double[]> Columns, int FirstLine);

/// <summary>Reads the CSV form of a recording strictly: commas or semicolons or tabs between cells, a point in numbers (a comma too where cells are parted by another mark).</summary>
internal static class SpinCsv
{
    private const int MostRows = 5_000_000;

    /// <summary>Reads a text; a problem says line and column.</summary>
    public static Reading<SpinTable> Read(string text)
    {
        var notes = new List<(string, string, int)>();
        List<string>? names = null;
        List<double>[] columns = [];
        var separator = ',';
        var (line, firstLine) = (0, 0);
        foreach (var raw in text.AsSpan().EnumerateLines())
        {
            line++;
            var row = line == 1 ? raw.TrimStart('\uFEFF') : raw;
            if (row.IsWhiteSpace())
            {
                continue;
            }

            if (row.TrimStart()[0] == '#')
            {
                var note = row.TrimStart()[1..];
                var colon = note.IndexOf(':');
                if (names is not null || colon < 0)
                {
                    return Failed(line, 1, "note-unreadable", names is null ? "a note is written '# key: value'" : "notes stand before the names of the columns");
                }

                notes.Add((note[..colon].Trim().ToString(), note[(colon + 1)..].Trim().ToString(), line));
                continue;
            }

            if (names is null)
            {
                separator = row.Contains('\t') ? '\t' : row.Contains(';') ? ';' : ',';
                names = [.. row.ToString().Split(separator).Select(n => n.Trim().Trim('"'))];
                if (names.GroupBy(n => n, StringComparer.Ordinal).FirstOrDefault(g => g.Count() > 1 || g.Key.Length == 0) is { } twice)
                {
                    return Failed(line, 1, "header-unreadable", twice.Key.Length == 0 ? "a column has no name" : $"the name '{NumberText.Shown(twice.Key)}' stands twice");
                }

                columns = [.. names.Select(_ => new List<double>())];
                continue;
            }

            firstLine = firstLine == 0 ? line : firstLine;
            if (columns[0].Count >= MostRows)
            {
                return Failed(line, 1, "too-many", "the recording is too long; one spin takes some seconds");
            }

            if (Row(row, separator, columns, line) is { } problem)
            {
                return Reading<SpinTable>.Failed(problem);
            }
        }

        return names is null || columns[0].Count == 0
            ? Failed(Math.Max(1, line), 1, "file-empty", names is null ? "there is no row of names" : "there is no row of numbers")
            : Reading<SpinTable>.Of(new SpinTable(notes, names, [.. columns.Select(c => c.ToArray())], firstLine));
    }

    private static Problem? Row(ReadOnlySpan<char> row, char separator, List<double>[] columns, int line)
    {
        var (cell, from) = (0, 0);
        while (true)
        {
            var length = row[from..].IndexOf(separator);
            var text = (length < 0 ? row[from..] : row.Slice(from, length)).Trim();
            if (cell == columns.Length)
            {
                return At(line, from + 1, "cells-differ", string.Create(CultureInfo.InvariantCulture, $"this row has more cells than the {columns.Length} names"));
            }

            if (!Number(text, separator, out var number))
            {
                return At(line, from + 1, "number-unreadable", text.IsEmpty ? "this cell is empty; leave out the whole row where samples were lost" : $"'{NumberText.Shown(text)}' is not a number");
            }

            columns[cell++].Add(number);
            if (length < 0)
            {
                return cell == columns.Length ? null : At(line, row.Length + 1, "cells-differ", string.Create(CultureInfo.InvariantCulture, $"this row has {cell} cells for {columns.Length} names"));
            }

            from += length + 1;
        }
    }

    private static bool Number(ReadOnlySpan<char> text, char separator, out double number)
    {
        const NumberStyles style = NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent;
        if (separator != ',' && text.Contains(',') && !text.Contains('.'))
        {
            Span<char> pointed = stackalloc char[Math.Min(text.Length, 64)];
            number = 0;
            if (text.Length > 64)
            {
                return false;
            }

            text.Replace(pointed, ',', '.');
            return double.TryParse(pointed, style, CultureInfo.InvariantCulture, out number) && Math.Abs(number) <= NumberText.Greatest;
        }

        return double.TryParse(text, style, CultureInfo.InvariantCulture, out number) && Math.Abs(number) <= NumberText.Greatest;
    }

    private static Reading<SpinTable> Failed(int line, int column, string code, string what) => Reading<SpinTable>.Failed(At(line, column, code, what));

    private static Problem At(int line, int column, string code, string what) =>
        new(string.Create(CultureInfo.InvariantCulture, $"{line}:{column}"), code, string.Create(CultureInfo.InvariantCulture, $"The CSV is not right at line {line}, column {column}: {what}."));
}
