namespace Trundle.Engine.Reference;

/// <summary>The tables that the engine carries, as a whole.</summary>
public static class EmbeddedTables
{
    /// <summary>Every row of every table whose status says that it is from memory: the table's file, the row's first cell, and the text that it is said to be in.</summary>
    /// <source>each row names its own</source>
    public static IEnumerable<(string Table, string Row, string Source)> FromMemory()
    {
        foreach (var name in CsvTable.Names(".csv").Where(n => !n.EndsWith(".figures.csv", StringComparison.Ordinal)))
        {
            var table = CsvTable.Embedded(name);
            if (!table.Has("status"))
            {
                continue;
            }

            foreach (var row in table.Rows)
            {
                if (table.Cell(row, "status").Contains("memory", StringComparison.Ordinal))
                {
                    yield return (name, row[0], table.Has("source") ? table.Cell(row, "source") : table.Cell(row, "status"));
                }
            }
        }
    }
}
