using System.Globalization;
using Trundle.Engine.Findings;
using Trundle.Measures;

namespace Trundle.Engine.Reference;

/// <summary>One speed symbol.</summary>
/// <param name="Symbol">A1 to A8, B to Y; (Y) for above 300 km/h; ZR and VR, which stand only inside a size.</param>
/// <param name="Speed">The speed that it stands for.</param>
/// <param name="Above">True where it stands for more than that speed, and only the maker can say how much.</param>
/// <param name="Note">What a person should know of it, or empty.</param>
/// <param name="Source">Where the row comes from.</param>
public sealed record SpeedSymbol(string Symbol, Speed Speed, bool Above, string Note, Source Source) : IComparable<SpeedSymbol>
{
    /// <summary>Slower before faster: by speed, never by letter (H stands between U and V).</summary>
    public int CompareTo(SpeedSymbol? other)
    {
        if (other is null)
        {
            return 1;
        }

        var bySpeed = Speed.CompareTo(other.Speed);
        return bySpeed != 0 ? bySpeed : Above.CompareTo(other.Above);
    }

    public static bool operator <(SpeedSymbol left, SpeedSymbol right) => left.CompareTo(right) < 0;

    public static bool operator >(SpeedSymbol left, SpeedSymbol right) => left.CompareTo(right) > 0;

    public static bool operator <=(SpeedSymbol left, SpeedSymbol right) => left.CompareTo(right) <= 0;

    public static bool operator >=(SpeedSymbol left, SpeedSymbol right) => left.CompareTo(right) >= 0;
}

/// <summary>The speed symbol table.</summary>
public static class SpeedSymbols
{
    private static readonly Dictionary<string, SpeedSymbol> All = Load();

    /// <summary>Every symbol from slow to fast.</summary>
    public static IReadOnlyList<SpeedSymbol> List { get; } = [.. All.Values.Order()];

    /// <summary>The symbol as a row, or null where there is none such.</summary>
    /// <param name="symbol">In upper case; "(Y)", "ZR" and "VR" are rows too.</param>
    /// <source>UN R30 section 2, speed category symbols (read)</source>
    public static SpeedSymbol? Of(string symbol) => All.GetValueOrDefault(symbol);

    private static Dictionary<string, SpeedSymbol> Load()
    {
        var table = CsvTable.Embedded("speed_symbol.csv");
        return table.Rows.Select(row =>
        {
            var speed = table.Cell(row, "km_h");
            return new SpeedSymbol(
                table.Cell(row, "symbol"),
                Speed.FromKilometresPerHour(double.Parse(speed.TrimStart('>'), NumberStyles.Float, CultureInfo.InvariantCulture)),
                speed.StartsWith('>'),
                table.Cell(row, "note"),
                new Source("speed category symbols, UN R30 section 2", Source.StatusOf(table.Cell(row, "status")) ?? SourceStatus.FromMemory));
        }).ToDictionary(s => s.Symbol, StringComparer.Ordinal);
    }
}
