using System.Text;

namespace Trundle.Published.Tests;

/// <summary>A published table carried with the tests in Data/: a header row, quoted cells where a cell holds a comma.</summary>
public sealed class PublishedTable
{
    private readonly string[] _columns;

    private PublishedTable(string[] columns, IReadOnlyList<string[]> rows) => (_columns, Rows) = (columns, rows);

    public IReadOnlyList<string[]> Rows { get; }

    public string Cell(string[] row, string column) => row[Array.IndexOf(_columns, column)];

    public static PublishedTable Of(string name)
    {
        using var stream = typeof(PublishedTable).Assembly.GetManifestResourceStream(name) ?? throw new InvalidOperationException(name);
        using var reader = new StreamReader(stream, Encoding.UTF8);
        var lines = reader.ReadToEnd().Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(l => Cells(l.TrimEnd('\r'))).ToList();
        return new PublishedTable(lines[0], [.. lines.Skip(1)]);
    }

    private static string[] Cells(string line)
    {
        var cells = new List<string>();
        var cell = new StringBuilder();
        var quoted = false;
        foreach (var c in line)
        {
            if (c == '"')
            {
                quoted = !quoted;
            }
            else if (c == ',' && !quoted)
            {
                cells.Add(cell.ToString());
                cell.Clear();
            }
            else
            {
                cell.Append(c);
            }
        }

        cells.Add(cell.ToString());
        return [.. cells];
    }
}
