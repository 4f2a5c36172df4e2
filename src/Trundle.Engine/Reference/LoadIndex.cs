using System.Globalization;
using Trundle.Engine.Findings;
using Trundle.Measures;

namespace Trundle.Engine.Reference;

/// <summary>The load index table: what a tyre may carry at the speed of its symbol.</summary>
public static class LoadIndex
{
    /// <summary>The greatest index of the table.</summary>
    public const int Greatest = 279;

    private static readonly (Mass Load, Source Source)[] Rows = Load();

    /// <summary>The load of an index.</summary>
    /// <param name="index">0 to 279.</param>
    /// <returns>The load, or null outside the table.</returns>
    /// <source>UN R30 Annex 4 and ISO 4000-1, by public copies of the table (60 to 150 second-hand, the rest from memory and held against the R40 series of ISO 3)</source>
    public static Mass? LoadOf(int index) => index is >= 0 and <= Greatest ? Rows[index].Load : null;

    /// <summary>Where the load of an index comes from.</summary>
    /// <param name="index">0 to 279.</param>
    /// <returns>The source with its status, or null outside the table.</returns>
    /// <source>UN R30 Annex 4 and ISO 4000-1, as <see cref="LoadOf"/></source>
    public static Source? SourceOf(int index) => index is >= 0 and <= Greatest ? Rows[index].Source : null;

    /// <summary>The least index that carries a load.</summary>
    /// <returns>The index, or null where the load is greater than the table's last.</returns>
    /// <source>UN R30 Annex 4 and ISO 4000-1, as <see cref="LoadOf"/></source>
    public static int? LeastFor(Mass load)
    {
        for (var i = 0; i <= Greatest; i++)
        {
            if (Rows[i].Load >= load)
            {
                return i;
            }
        }

        return null;
    }

    private static (Mass, Source)[] Load()
    {
        // "read" in the file means that several public copies of the table agree; none of them is the annex itself.
        var second = new Source("load index table, UN R30 Annex 4 (public copies agree)", SourceStatus.SecondHand);
        var memory = new Source("load index table, UN R30 Annex 4", SourceStatus.FromMemory);
        var table = CsvTable.Embedded("load_index.csv");
        var rows = new (Mass, Source)[Greatest + 1];
        foreach (var row in table.Rows)
        {
            var index = int.Parse(table.Cell(row, "load_index"), CultureInfo.InvariantCulture);
            var kilograms = double.Parse(table.Cell(row, "kg"), NumberStyles.Float, CultureInfo.InvariantCulture);
            rows[index] = (Mass.FromKilograms(kilograms), table.Cell(row, "status").StartsWith("read", StringComparison.Ordinal) ? second : memory);
        }

        return rows;
    }
}
