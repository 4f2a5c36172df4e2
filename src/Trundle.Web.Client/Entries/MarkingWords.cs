using System.Globalization;
using Trundle.Engine.Sidewall;
using Trundle.Measures;
using Trundle.Visits.Bay;

namespace Trundle.Web.Client.Entries;

/// <summary>A marking in words.</summary>
public static class MarkingWords
{
    /// <summary>Name and words of each part that the marking tells.</summary>
    public static IEnumerable<(string Name, string Words)> Of(Marking marking, UnitHabits units)
    {
        ArgumentNullException.ThrowIfNull(marking);
        ArgumentNullException.ThrowIfNull(units);
        var size = marking.Size;
        yield return ("size", $"{size.Text}, {Of(size.Construction)}{(size.ConstructionToBeRead ? " (to be read)" : "")}, {Of(size.TyreClass)}");
        var service = marking.Service;
        if (service.LoadSingle is { } load)
        {
            var index = service.LoadIndexSingle is { } li ? $" (index {li.ToString(CultureInfo.InvariantCulture)})" : "";
            var dual = service.LoadDual is { } d ? $"; in a dual pair {Load(d, units)}" : "";
            yield return ("load", $"{Load(load, units)}{index}{dual}{(service.ExtraLoad ? ", extra load" : "")}");
        }
        else if (service.LoadRange is { } range)
        {
            yield return ("load", $"range {range}");
        }

        if (service.Speed is { } speed)
        {
            yield return ("speed", $"{(service.AboveSymbol ? "above " : "")}{speed.Text("km/h", 0)}, {speed.Text("mph", 0)} ({service.SpeedSymbol})");
        }

        if (size.OverallDiameter is { } diameter)
        {
            yield return ("diameter", diameter.Text("mm", 0));
        }

        if (marking.Words.Count > 0)
        {
            yield return ("words", string.Join(", ", marking.Words));
        }
    }

    /// <summary>A construction in words.</summary>
    public static string Of(Construction construction) => construction switch
    {
        Construction.Radial => "radial",
        Construction.Diagonal => "diagonal",
        Construction.BiasBelted => "bias-belted",
    };

    /// <summary>A class in words.</summary>
    public static string Of(TyreClass tyreClass) => tyreClass switch
    {
        TyreClass.Passenger => "passenger",
        TyreClass.LightTruck => "light truck",
        TyreClass.Commercial => "commercial",
        TyreClass.Truck => "truck",
        TyreClass.TemporarySpare => "temporary spare",
        TyreClass.SpecialTrailer => "special trailer",
        TyreClass.Motorcycle => "motorcycle",
    };

    private static string Load(Mass load, UnitHabits units) => units.Mass == "oz"
        ? $"{load.Text("lb", 0)} ({load.Text("kg", 0)})"
        : $"{load.Text("kg", 0)} ({load.Text("lb", 0)})";
}
