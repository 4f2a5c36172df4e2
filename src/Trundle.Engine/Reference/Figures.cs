using System.Globalization;
using Trundle.Engine.Findings;
using Trundle.Measures;

namespace Trundle.Engine.Reference;

/// <summary>One single figure that the engine uses and that somebody could dispute: a limit, a factor, a distance.</summary>
/// <param name="Key">Its name in the code, for example <c>seating.guidance</c>.</param>
/// <param name="Value">The number in <paramref name="Unit"/>.</param>
/// <param name="Unit">The unit's symbol, or empty.</param>
/// <param name="What">What it is, in a sentence for people.</param>
/// <param name="Source">Where it comes from.</param>
public sealed record Figure(string Key, double Value, string Unit, string What, Source Source)
{
    /// <summary>The figure as a quantity.</summary>
    public T As<T>() where T : struct, IQuantity<T> => Quantity.Of<T>(Value, Unit);

    /// <summary>The figure as a limit.</summary>
    public Limit Limit(int decimals) => new(Amount.Number(Value, Unit, decimals), Source);
}

/// <summary>Every single figure, from the <c>*.figures.csv</c> file of each branch: key, value, unit, what, source, status.</summary>
public static class Figures
{
    private static readonly Dictionary<string, Figure> All = Load();

    /// <summary>The figure of a key; throws where there is none, since that is a mistake in the code.</summary>
    /// <source>each figure names its own</source>
    public static Figure Of(string key) => All[key];

    /// <summary>All figures in order of their keys, for the page that lists them.</summary>
    public static IReadOnlyList<Figure> List { get; } = [.. All.Values.OrderBy(f => f.Key, StringComparer.Ordinal)];

    private static Dictionary<string, Figure> Load()
    {
        var figures = new List<Figure>();
        foreach (var name in CsvTable.Names(".figures.csv"))
        {
            var table = CsvTable.Embedded(name);
            foreach (var row in table.Rows)
            {
                var status = Source.StatusOf(table.Cell(row, "status"))
                    ?? throw new InvalidOperationException($"{name}: the status of '{table.Cell(row, "key")}' is not a known word.");
                figures.Add(new Figure(
                    table.Cell(row, "key"),
                    double.Parse(table.Cell(row, "value"), NumberStyles.Float, CultureInfo.InvariantCulture),
                    table.Cell(row, "unit"),
                    table.Cell(row, "what"),
                    new Source(table.Cell(row, "source"), status)));
            }
        }

        return figures.ToDictionary(f => f.Key, StringComparer.Ordinal);
    }
}
