using Trundle.Engine.Sidewall;

namespace Trundle.Engine.Fitment;

/// <summary>How two size designations stand to each other.</summary>
public enum SizeRelation
{
    /// <summary>One size.</summary>
    Same,

    /// <summary>Alike but for the aspect ratio, 80 and 82, which count as one.</summary>
    SameButEightyAndEightyTwo,

    /// <summary>The same numbers under another standard: P-metric beside Euro-metric.</summary>
    SameNumbersOtherStandard,

    /// <summary>Two sizes.</summary>
    Different,
}

/// <summary>Compares sizes, construction aside.</summary>
public static class SizeMatch
{
    private const double OneSizeMillimetres = 0.01;

    /// <summary>How two sizes stand to each other. The construction code does not count here: it has its own rules.</summary>
    /// <source>UK MOT inspection manual 4.1 (read) for 80 and 82 counting as one; else common practice</source>
    public static SizeRelation Relation(SizeDesignation first, SizeDesignation second)
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        if (!SameFamily(first.Family, second.Family)
            || Kind(first.TyreClass) != Kind(second.TyreClass)
            || !Alike(first.SectionWidth?.Millimetres, second.SectionWidth?.Millimetres)
            || !Alike(first.RimDiameterInches, second.RimDiameterInches)
            || !Alike(first.RimDiameterMillimetres, second.RimDiameterMillimetres)
            || first.Letters != second.Letters
            || (first.Family is MarkingFamily.Flotation or MarkingFamily.ExtendedMobility && !Alike(first.OverallDiameter?.Millimetres, second.OverallDiameter?.Millimetres)))
        {
            return SizeRelation.Different;
        }

        if (!Alike(first.AspectRatioPercent, second.AspectRatioPercent))
        {
            return first.AspectRatioPercent is 80 or 82 && second.AspectRatioPercent is 80 or 82 ? SizeRelation.SameButEightyAndEightyTwo : SizeRelation.Different;
        }

        return (first.Prefix == "P") == (second.Prefix == "P") ? SizeRelation.Same : SizeRelation.SameNumbersOtherStandard;
    }

    /// <summary>What the size numbers are meant for. A class that is told from the load index alone does not make another size.</summary>
    private static int Kind(TyreClass of) => of switch
    {
        TyreClass.Passenger or TyreClass.Motorcycle => 0,
        TyreClass.Commercial or TyreClass.Truck => 1,
        TyreClass.LightTruck => 2,
        TyreClass.TemporarySpare => 3,
        TyreClass.SpecialTrailer => 4,
    };

    /// <summary>A metric size without aspect ratio is of nominal aspect 82 and compares with those that mark one.</summary>
    private static bool SameFamily(MarkingFamily first, MarkingFamily second) =>
        first == second
        || (first is MarkingFamily.Metric or MarkingFamily.MetricWithoutAspect && second is MarkingFamily.Metric or MarkingFamily.MetricWithoutAspect);

    private static bool Alike(double? first, double? second) =>
        (first is null && second is null) || (first is { } a && second is { } b && Math.Abs(a - b) < OneSizeMillimetres);
}
