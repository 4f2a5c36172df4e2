using Trundle.Engine.Reference;

namespace Trundle.Engine.Sidewall;

/// <summary>Tells the class of vehicle from the marking alone.</summary>
internal static class TyreClassRule
{
    public static TyreClass Of(SizeMatch size, ServiceScan scan)
    {
        if (scan.Words.Contains("M/C"))
        {
            return TyreClass.Motorcycle;
        }

        if (scan.Words.Any(w => w is "ST" or "MH") || size.Part("pre") == "ST")
        {
            return TyreClass.SpecialTrailer;
        }

        if (size.Part("pre") is "T" or "S" || scan.Words.Contains("TEMPORARY USE ONLY"))
        {
            return TyreClass.TemporarySpare;
        }

        if (size.Part("pre") == "LT" || scan.Words.Contains("LT"))
        {
            return TyreClass.LightTruck;
        }

        if (scan.Words.Any(w => w is "C" or "CP"))
        {
            return TyreClass.Commercial;
        }

        return size.Family switch
        {
            MarkingFamily.Metric => Metric(size, scan),
            MarkingFamily.MetricWithoutAspect => ByLoad(scan) ?? TyreClass.Passenger,
            MarkingFamily.MillimetreRim or MarkingFamily.ExtendedMobility or MarkingFamily.Alphanumeric => TyreClass.Passenger,
            MarkingFamily.Flotation => TyreClass.LightTruck,
            MarkingFamily.Inch => Inch(size, scan),
            MarkingFamily.MotorcycleLetter => TyreClass.Motorcycle,
        };
    }

    private static TyreClass Metric(SizeMatch size, ServiceScan scan)
    {
        if (size.Part("pre") is "P" or "HL" || scan.Words.Contains("HL"))
        {
            return TyreClass.Passenger;
        }

        // A rim code ending in .5 is a truck's 15 degree rim; 14.5 to 16.5 were light vehicles'.
        if (SizeRange.Number(size, "rim") is { } rim && rim >= 17 && rim != Math.Floor(rim))
        {
            return TyreClass.Truck;
        }

        return ByLoad(scan) ?? (IsMotorcycle(size, scan) ? TyreClass.Motorcycle : TyreClass.Passenger);
    }

    /// <summary>A dual load index, or one that is a truck's.</summary>
    private static TyreClass? ByLoad(ServiceScan scan)
    {
        if (scan.Services.Count == 0)
        {
            return null;
        }

        var first = scan.Services[0];
        return first.Single >= Figures.Of("sidewall.first-heavy-load-index").Value ? TyreClass.Truck : first.Dual is null ? null : TyreClass.Commercial;
    }

    /// <summary>
    /// Metric car widths on inch rims end in 5 and motorcycles' in 0 (120/70 R17, 180/55 R17), or are below 100; and motorcycles' load indices are low.
    /// The reading carries a caution where M/C is not marked.
    /// </summary>
    private static bool IsMotorcycle(SizeMatch size, ServiceScan scan) =>
        SizeRange.Number(size, "w") is { } w && (w < 100 || (w % 10 == 0 && w <= 300)) && (scan.Services.Count == 0 || scan.Services[0].Single <= 90);

    private static TyreClass Inch(SizeMatch size, ServiceScan scan)
    {
        var width = SizeRange.Number(size, "w")!.Value;
        var rim = SizeRange.Number(size, "rim")!.Value;
        if (rim != Math.Floor(rim))
        {
            return rim >= 17 ? TyreClass.Truck : rim == 14.5 ? TyreClass.SpecialTrailer : TyreClass.LightTruck;
        }

        if (rim >= 20 && width >= 6)
        {
            return TyreClass.Truck;
        }

        return ByLoad(scan) ?? (width <= 4.5 && rim >= 14 && scan.LoadRange is null ? TyreClass.Motorcycle
            : rim < 13 && scan.LoadRange is not null ? TyreClass.SpecialTrailer
            : TyreClass.Passenger);
    }
}
