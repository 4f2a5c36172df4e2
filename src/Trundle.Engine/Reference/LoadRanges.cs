using System.Globalization;
using Trundle.Measures;

namespace Trundle.Engine.Reference;

/// <summary>Load range letters and the load letters of alphanumeric sizes.</summary>
public static class LoadRanges
{
    private static readonly Dictionary<string, int> Plies = Numbers("load_range.csv", "ply_rating");

    private static readonly Dictionary<string, int> Letters = Numbers("alphanumeric_load.csv", "maximum_load_lb_at_32_psi_load_range_b");

    /// <summary>The ply rating that a load range stands for (B 4, C 6, D 8 …), or null for A and for letters that are no load range.</summary>
    /// <source>TRA load ranges (from memory)</source>
    public static int? PlyRating(string letter) => Plies.TryGetValue(letter, out var plies) ? plies : null;

    /// <summary>True for A to N without I and K.</summary>
    /// <source>TRA load ranges (from memory)</source>
    public static bool IsLoadRange(string letter) => letter == "A" || Plies.ContainsKey(letter);

    /// <summary>The greatest load of an alphanumeric size by its letter, at 32 psi and load range B, or null where the letter is not held.</summary>
    /// <source>US alphanumeric load letters (from memory)</source>
    public static Mass? AlphanumericLoad(string letter) => Letters.TryGetValue(letter, out var pounds) ? Mass.FromPounds(pounds) : null;

    private static Dictionary<string, int> Numbers(string name, string column)
    {
        var table = CsvTable.Embedded(name);
        return table.Rows.ToDictionary(r => table.Cell(r, "letter"), r => int.Parse(table.Cell(r, column), CultureInfo.InvariantCulture), StringComparer.Ordinal);
    }
}
