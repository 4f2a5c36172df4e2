using System.Globalization;
using Trundle.Engine.Findings;
using Trundle.Measures;

namespace Trundle.Engine.Reference;

/// <summary>How much of its load a tyre may carry at a speed.</summary>
public abstract record SpeedLoad
{
    private SpeedLoad()
    {
    }

    /// <summary>A share of the load of the load index.</summary>
    /// <param name="Share">1 or below.</param>
    /// <param name="Source">Where the share comes from.</param>
    public sealed record Known(double Share, Source Source) : SpeedLoad;

    /// <summary>The speed is above the symbol's.</summary>
    public sealed record AboveSymbol : SpeedLoad;

    /// <summary>Only the tyre's maker can say: no symbol, or a symbol in brackets and a speed above it.</summary>
    public sealed record AskTheMaker : SpeedLoad;

    /// <summary>Goes on with one of the cases.</summary>
    public TResult Match<TResult>(Func<Known, TResult> known, Func<TResult> aboveSymbol, Func<TResult> askTheMaker)
    {
        ArgumentNullException.ThrowIfNull(known);
        ArgumentNullException.ThrowIfNull(aboveSymbol);
        ArgumentNullException.ThrowIfNull(askTheMaker);
        return this switch
        {
            Known k => known(k),
            AboveSymbol => aboveSymbol(),
            _ => askTheMaker(),
        };
    }
}

/// <summary>Load at high vehicle speed.</summary>
public static class HighSpeedLoad
{
    private static readonly Source Table = new("Automotive Engineering textbook p. 291 fig. 10.1-14, citing ETRTO; the same in UN R30 paragraph 2.33", SourceStatus.Read);

    private static readonly Dictionary<string, (double KilometresPerHour, double Percent)[]> Columns = Load();

    /// <summary>
    /// The share of the index load at a vehicle's top speed: V, W and Y by the table with straight lines between its rows, slower symbols
    /// whole up to their speed.
    /// </summary>
    /// <param name="service">The service description.</param>
    /// <param name="topSpeed">The vehicle's top speed.</param>
    /// <returns>The share, or that the speed is above the symbol's, or that only the maker can say.</returns>
    /// <source>Automotive Engineering textbook p. 291 fig. 10.1-14 (read); UN R30 paragraph 2.33 (from memory)</source>
    public static SpeedLoad Share(ServiceDescriptionSpeed service, Speed topSpeed)
    {
        if (service.Symbol is null || service.Speed is not { } symbolSpeed)
        {
            return new SpeedLoad.AskTheMaker();
        }

        if (topSpeed > symbolSpeed)
        {
            return service.Above ? new SpeedLoad.AskTheMaker() : new SpeedLoad.AboveSymbol();
        }

        if (!Columns.TryGetValue(service.Symbol, out var column))
        {
            return new SpeedLoad.Known(1, new Source("UN R30 section 2: the load index holds up to the speed of the symbol", SourceStatus.FromMemory));
        }

        return new SpeedLoad.Known(Interpolated(column, topSpeed.KilometresPerHour) / 100, Table);
    }

    /// <summary>The load that a tyre may carry at a vehicle's top speed, or null where it is not known or the speed is above the symbol's.</summary>
    /// <param name="service">The service description.</param>
    /// <param name="topSpeed">The vehicle's top speed.</param>
    /// <source>as <see cref="Share"/></source>
    public static Mass? LoadAt(Sidewall.ServiceDescription service, Speed topSpeed)
    {
        ArgumentNullException.ThrowIfNull(service);
        return service.LoadSingle is { } load
            ? Share(ServiceDescriptionSpeed.Of(service), topSpeed).Match<Mass?>(known => load * known.Share, () => null, () => null)
            : null;
    }

    private static double Interpolated((double KilometresPerHour, double Percent)[] column, double kilometresPerHour)
    {
        if (kilometresPerHour <= column[0].KilometresPerHour)
        {
            return column[0].Percent;
        }

        for (var i = 1; i < column.Length; i++)
        {
            var (above, percentAbove) = column[i];
            if (kilometresPerHour <= above)
            {
                var (below, percentBelow) = column[i - 1];
                return percentBelow + ((percentAbove - percentBelow) * (kilometresPerHour - below) / (above - below));
            }
        }

        return column[^1].Percent;
    }

    private static Dictionary<string, (double, double)[]> Load()
    {
        var table = CsvTable.Embedded("speed_load_pct.csv");
        return new[] { "V", "W", "Y" }.ToDictionary(
            symbol => symbol,
            symbol => table.Rows
                .Where(row => table.Cell(row, $"{symbol}_pct").Length > 0 && table.Cell(row, "status") == "read")
                .Select(row => (Number(table.Cell(row, "vehicle_max_speed_km_h")), Number(table.Cell(row, $"{symbol}_pct"))))
                .ToArray());

        static double Number(string text) => double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture);
    }
}

/// <summary>What of a service description tells the speed.</summary>
/// <param name="Symbol">Speed symbol, or null.</param>
/// <param name="Speed">Its speed, or null.</param>
/// <param name="Above">It stands for more than that speed.</param>
public readonly record struct ServiceDescriptionSpeed(string? Symbol, Speed? Speed, bool Above)
{
    /// <summary>The speed part of a service description.</summary>
    /// <source>UN R30 section 2 (from memory)</source>
    public static ServiceDescriptionSpeed Of(Sidewall.ServiceDescription service)
    {
        ArgumentNullException.ThrowIfNull(service);
        return new ServiceDescriptionSpeed(service.SpeedSymbol, service.Speed, service.AboveSymbol);
    }
}
