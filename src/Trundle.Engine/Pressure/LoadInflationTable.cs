using System.Globalization;
using System.Text.RegularExpressions;
using Trundle.Engine.Findings;
using Trundle.Engine.Reference;
using Trundle.Engine.Sidewall;
using Trundle.Measures;

namespace Trundle.Engine.Pressure;

/// <summary>One published row: a pressure and the load that it carries.</summary>
/// <param name="Tyre">The row's tyre, in the table's words.</param>
/// <param name="System">Whose table.</param>
/// <param name="Pressure">Gauge pressure.</param>
/// <param name="Load">Load of one tyre.</param>
/// <param name="FormulaLoad">What the law of the class gives, where the table states it.</param>
/// <param name="Source">Where it was read; a row with the status calculated is no published row and is never answered from.</param>
public sealed record LoadInflationRow(string Tyre, string System, GaugePressure Pressure, Mass Load, Mass? FormulaLoad, Source Source);

/// <summary>The published rows of load over pressure that are held.</summary>
public static partial class LoadInflationTable
{
    private static readonly Dictionary<string, IReadOnlyList<LoadInflationRow>> ByTyre = Group();

    /// <summary>Every row, published or computed, in the table's order.</summary>
    public static IReadOnlyList<LoadInflationRow> Rows { get; } = Load();

    /// <summary>
    /// The published rows for a tyre, from the least pressure up.
    /// </summary>
    /// <param name="marking">The marking.</param>
    /// <param name="dual">True for a tyre in a dual pair.</param>
    /// <returns>Empty where none is held.</returns>
    /// <source>each row names its own</source>
    public static IReadOnlyList<LoadInflationRow> For(Marking marking, bool dual)
    {
        ArgumentNullException.ThrowIfNull(marking);
        return Key(marking, dual) is { } key && ByTyre.TryGetValue(key, out var rows) ? rows : [];
    }

    /// <summary>
    /// The least pressure for a load by published rows: on a row exactly, between two rows on the straight line between them, which lies on
    /// the safe side of the law. Below the least row the least row's pressure holds: nothing lower is published.
    /// </summary>
    /// <param name="rows">At least two rows, from the least pressure up.</param>
    /// <param name="load">The load.</param>
    /// <returns>Null where the load is above the last row.</returns>
    /// <source>each row names its own; the straight line between two rows is ours</source>
    public static SourcedPressure? Pressure(IReadOnlyList<LoadInflationRow> rows, Mass load)
    {
        ArgumentNullException.ThrowIfNull(rows);
        var above = rows.FirstOrDefault(r => r.Load >= load);
        if (above is null)
        {
            return null;
        }

        var below = rows.TakeWhile(r => r.Load < load).LastOrDefault();
        if (below is null || above.Load == load)
        {
            return new SourcedPressure(above.Pressure, above.Source);
        }

        var part = (load - below.Load) / (above.Load - below.Load);
        return new SourcedPressure(
            below.Pressure + ((above.Pressure - below.Pressure) * part),
            new Source($"between two published rows of {above.Source.Text}", SourceStatus.Calculated));
    }

    private static string? Key(Marking marking, bool dual)
    {
        var size = marking.Size;
        if (size.TyreClass == TyreClass.Passenger && size.Prefix is not ("P" or "HL") && size.Construction == Construction.Radial && !dual)
        {
            return !marking.Service.ExtraLoad && marking.Service.LoadIndexSingle is { } index
                ? $"LI {index.ToString(CultureInfo.InvariantCulture)}"
                : null;
        }

        return size.TyreClass == TyreClass.LightTruck && marking.Service.LoadRange is { } range
            ? $"{Bare(size.Text)} {range}{(dual ? " dual" : "")}"
            : null;
    }

    private static Dictionary<string, IReadOnlyList<LoadInflationRow>> Group()
    {
        var groups = new Dictionary<string, List<LoadInflationRow>>(StringComparer.Ordinal);
        foreach (var row in Load().Where(r => r.Source.Status == SourceStatus.Read))
        {
            if (KeyOf(row.Tyre) is { } key)
            {
                (groups.TryGetValue(key, out var list) ? list : groups[key] = []).Add(row);
            }
        }

        return groups.ToDictionary(g => g.Key, g => (IReadOnlyList<LoadInflationRow>)[.. g.Value.OrderBy(r => r.Pressure.Pascals)], StringComparer.Ordinal);
    }

    private static string? KeyOf(string tyre)
    {
        if (CarRow().Match(tyre) is { Success: true } car)
        {
            return $"LI {car.Groups[1].Value}";
        }

        return LightTruckRow().Match(tyre) is { Success: true } lt
            ? $"{Bare(lt.Groups[1].Value)} {lt.Groups[2].Value}{(lt.Groups[3].Value.StartsWith(" dual", StringComparison.Ordinal) ? " dual" : "")}"
            : null;
    }

    private static string Bare(string size) => size.Replace(" ", "", StringComparison.Ordinal).ToUpperInvariant();

    private static IReadOnlyList<LoadInflationRow> Load()
    {
        var table = CsvTable.Embedded("load_inflation.csv");
        var rows = new List<LoadInflationRow>();
        var lastSource = "";
        foreach (var row in table.Rows)
        {
            // The psi column is exact where it is filled; the kPa beside it is rounded.
            var pressure = table.Cell(row, "psi") is { Length: > 0 } psi
                ? GaugePressure.FromPoundsPerSquareInch(Number(psi))
                : GaugePressure.FromKilopascals(Number(table.Cell(row, "kPa")));
            var load = table.Cell(row, "load_lb") is { Length: > 0 } lb
                ? Mass.FromPounds(Number(lb))
                : Mass.FromKilograms(Number(table.Cell(row, "load_kg")));
            var formula = table.Cell(row, "formula_value");
            var source = table.Cell(row, "source");
            lastSource = source == "same" ? lastSource : source;
            var status = Source.StatusOf(table.Cell(row, "status")) ?? throw new InvalidOperationException($"load_inflation.csv: '{table.Cell(row, "status")}' is not a known status.");
            rows.Add(new LoadInflationRow(
                table.Cell(row, "tyre"),
                table.Cell(row, "system"),
                pressure,
                load,
                formula.Length == 0 ? null : formula.EndsWith(" lb", StringComparison.Ordinal) ? Mass.FromPounds(Number(formula[..^3])) : Mass.FromKilograms(Number(formula)),
                new Source(lastSource, status)));
        }

        return rows;

        static double Number(string text) => double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture);
    }

    [GeneratedRegex(@"^ETRTO car radial, standard load, LI (\d+)$", RegexOptions.CultureInvariant, 200)]
    private static partial Regex CarRow();

    [GeneratedRegex(@"^(LT\d+/\d+R\d+) LR ([A-Z])( single| dual.*)?$", RegexOptions.CultureInvariant, 200)]
    private static partial Regex LightTruckRow();
}
