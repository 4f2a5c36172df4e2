using System.Reflection;
using System.Text;

namespace Trundle.Engine.Reference;

/// <summary>A comma-separated table carried inside the engine: a header row, quoted cells where a cell holds a comma.</summary>
internal sealed class CsvTable
{
    private readonly Dictionary<string, int> _columns;

    private CsvTable(string name, IReadOnlyList<string[]> rows)
    {
        Name = name;
        _columns = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var column in rows[0])
        {
            _columns.Add(column, _columns.Count);
        }

        Rows = [.. rows.Skip(1)];
    }

    public string Name { get; }

    public IReadOnlyList<string[]> Rows { get; }

    /// <summary>The cell of a row in a named column; empty where the row is short.</summary>
    public string Cell(string[] row, string column) => _columns[column] < row.Length ? row[_columns[column]] : "";

    public bool Has(string column) => _columns.ContainsKey(column);

    public static CsvTable Embedded(string name)
    {
        using var stream = typeof(CsvTable).Assembly.GetManifestResourceStream(name)
            ?? throw new InvalidOperationException($"The table '{name}' is not carried in the engine.");
        using var reader = new StreamReader(stream, Encoding.UTF8);
        return new CsvTable(name, Parse(reader.ReadToEnd()));
    }

    /// <summary>The names of all tables carried, that end as asked.</summary>
    public static IEnumerable<string> Names(string ending) =>
        Assembly.GetExecutingAssembly().GetManifestResourceNames().Where(n => n.EndsWith(ending, StringComparison.Ordinal)).Order(StringComparer.Ordinal);

    private static List<string[]> Parse(string text)
    {
        var rows = new List<string[]>();
        var row = new List<string>();
        var cell = new StringBuilder();
        var quoted = false;
        for (var i = 0; i < text.Length; i++)
        {
            var c = text[i];
            if (quoted)
            {
                if (c == '"' && i + 1 < text.Length && text[i + 1] == '"')
                {
                    cell.Append('"');
                    i++;
                }
                else if (c == '"')
                {
                    quoted = false;
                }
                else
                {
                    cell.Append(c);
                }
            }
            else if (c == '"')
            {
                quoted = true;
            }
            else if (c == ',')
            {
                row.Add(cell.ToString());
                cell.Clear();
            }
            else if (c == '\n')
            {
                EndRow();
            }
            else if (c != '\r')
            {
                cell.Append(c);
            }
        }

        EndRow();
        return rows;

        void EndRow()
        {
            row.Add(cell.ToString());
            cell.Clear();
            if (row.Count > 1 || row[0].Length > 0)
            {
                rows.Add([.. row]);
            }

            row.Clear();
        }
    }
}
