using System.Globalization;
using Trundle.Engine.Balance;
using Trundle.Engine.Vehicles;
using Trundle.Measures;
using Trundle.Web.Client.Balance;
using Trundle.Web.Client.Entries;
using Trundle.Web.Client.Instruments;

namespace Trundle.Web.Client.Tools;

/// <summary>What a visit tells of a wheel for a computation: nothing that is entered once is entered again.</summary>
public static class WheelTold
{
    /// <summary>The fields with their texts.</summary>
    public static IEnumerable<(string Field, string Typed)> Of(OpenVisit visit, Position position, string key)
    {
        ArgumentNullException.ThrowIfNull(visit);
        return key switch
        {
            "why" => Why(visit, position),
            "runout" or "match" => Assembly(visit, position, key),
            "leak" => Assembly(visit, position, key).Concat(Leak(visit, position)),
            _ => [],
        };
    }

    /// <summary>The settings, both spins' displays, and the weights that were chosen and recorded as fitted.</summary>
    private static IEnumerable<(string, string)> Why(OpenVisit visit, Position position)
    {
        var at = WheelBalance.FieldAt(position);
        foreach (var setting in new[] { "rimDistance", "rimDiameter", "rimWidth" })
        {
            if (Setting(visit, at, setting) is { } typed)
            {
                yield return ($"entered.{setting}", typed);
            }
        }

        foreach (var plane in new[] { "inner", "outer" })
        {
            if (visit[$"{at}.planes.{plane}.kind"] is { } kind)
            {
                yield return ($"entered.{plane}", kind);
            }
        }

        foreach (var entry in visit.Fields.Under($"{at}.balancer"))
        {
            yield return (entry.Field[(at.Length + 1)..], entry.Typed);
        }

        foreach (var place in StripPlace(visit, position))
        {
            yield return place;
        }

        if (visit.BalancerOf(position)?.Repeatability is { } repeatability)
        {
            yield return ("machine.repeatability", ShopInstruments.Typed(repeatability));
        }

        if (visit[$"{at}.wheel.mass"] is { } mass)
        {
            yield return ("wheel.mass", mass);
        }

        foreach (var entry in visit.Fields.Under($"{at}.readings"))
        {
            yield return ($"spins.0.display{entry.Field[$"{at}.readings".Length..]}", entry.Typed);
        }

        var weightsOn = visit[$"work.steps.{position}.weights-on"] is not null;
        if (weightsOn && WheelBalance.Of(visit, position).Outcome is { } outcome)
        {
            foreach (var (weight, i) in outcome.Weights.Select((w, i) => (w, i)))
            {
                var row = $"spins.0.fittedAfter.{i.ToString(CultureInfo.InvariantCulture)}";
                yield return ($"{row}.plane", weight.Plane == PlaneSide.Inner ? "inner" : "outer");
                yield return ($"{row}.kind", weight.Kind == WeightKind.Clip ? "clip" : "adhesive");
                yield return ($"{row}.mass", weight.Mass.Text("g", weight.Mass.Grams == Math.Round(weight.Mass.Grams) ? 0 : 2));
                yield return ($"{row}.angle", weight.Place.Degrees.ToString("0.#", CultureInfo.InvariantCulture));
            }
        }

        foreach (var entry in visit.Fields.Under($"work.steps.{position}.check-spin"))
        {
            yield return ($"spins.1.display{entry.Field[$"work.steps.{position}.check-spin".Length..]}", entry.Typed);
        }
    }

    /// <summary>The rules and the placard by which the vehicle warns, the load, and the pressure with which it came as the first reading.</summary>
    private static IEnumerable<(string, string)> Leak(OpenVisit visit, Position position)
    {
        var fitted = $"fitted.{position}";
        var placard = position.IsSpare ? "vehicle.spare.placard" : $"vehicle.axles.{(position.Axle - 1).ToString(CultureInfo.InvariantCulture)}.placard";
        foreach (var entry in visit.Fields.Under(placard))
        {
            yield return ($"placard{entry.Field[placard.Length..]}", entry.Typed);
        }

        foreach (var (field, from) in new[] { ("rules", "rules"), ("vehicleClass", "vehicle.class"), ("topSpeed", "vehicle.topSpeed"), ("load", $"{fitted}.load"), ("expected", "conditions.expected") })
        {
            if (visit[from] is { } typed)
            {
                yield return (field, typed);
            }
        }

        if (position.Dual != DualPlace.Single)
        {
            yield return ("dual", "true");
        }

        if (visit[$"{fitted}.pressure.value"] is not { } found)
        {
            yield break;
        }

        yield return ("readings.0.pressure", found);
        foreach (var (field, from) in new[] { ("at", "date"), ("temperature", $"{fitted}.pressure.temperature"), ("hot", $"{fitted}.pressure.hot") })
        {
            if (visit[from] is { } typed)
            {
                yield return ($"readings.0.{field}", typed);
            }
        }
    }

    /// <summary>A setting as entered on the balancer; diameter and width else as told of the wheel.</summary>
    private static string? Setting(OpenVisit visit, string at, string setting) => visit[$"{at}.settings.{setting}"] ?? visit[$"{at}.wheel.{setting}"];

    /// <summary>
    /// Where an outer adhesive weight sits from its flange, where the profile does not say it and the plane was measured: the distance between the
    /// planes counts from the inner clip, so that no origin has to be known.
    /// </summary>
    private static IEnumerable<(string, string)> StripPlace(OpenVisit visit, Position position)
    {
        var at = WheelBalance.FieldAt(position);
        if (visit[$"{at}.planes.inner.kind"] != "clip" || visit[$"{at}.planes.outer.kind"] != "adhesive"
            || visit.Fields.Under($"{at}.balancer.weightPlaces.outerAdhesive").Any()
            || WheelBalance.Of(visit, position).File?.Problem?.Planes is not { } planes
            || Quantity.Read<Length>(Setting(visit, at, "rimDiameter") ?? "", "in") is not { IsRead: true } diameter
            || Quantity.Read<Length>(Setting(visit, at, "rimWidth") ?? "", "in") is not { IsRead: true } width)
        {
            yield break;
        }

        var clip = Quantity.Read<Length>(visit[$"{at}.balancer.weightPlaces.innerClip.axial"] ?? "", "mm") is { IsRead: true } read ? read.Value : default;
        yield return ("balancer.weightPlaces.outerAdhesive.radial", (planes.Outer.Radius - (diameter.Value / 2)).Text("mm", 1));
        yield return ("balancer.weightPlaces.outerAdhesive.axial", (planes.Outer.Axial - planes.Inner.Axial + clip - width.Value).Text("mm", 1));
    }

    /// <summary>The tyre and the wheel, from which the ceiling for seating the beads comes.</summary>
    private static IEnumerable<(string, string)> Assembly(OpenVisit visit, Position position, string key)
    {
        if (key == "runout")
        {
            yield return ("part", "assembly");
        }

        foreach (var part in new[] { "tyre", "wheel" })
        {
            foreach (var entry in visit.Fields.Under($"fitted.{position}.{part}"))
            {
                yield return ($"{part}{entry.Field[$"fitted.{position}.{part}".Length..]}", entry.Typed);
            }
        }
    }
}
