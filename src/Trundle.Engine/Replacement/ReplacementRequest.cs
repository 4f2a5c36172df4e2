using Trundle.Engine.Reference;
using Trundle.Engine.Sidewall;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Engine.Replacement;

/// <summary>One tyre that may stand in for the placard's.</summary>
/// <param name="Marking">Its marking; where only a size is known, it has no service description.</param>
/// <param name="Marks">Further marks of its sidewall.</param>
/// <param name="Rim">The rim that it would go on, or null: then the fitted wheel stays, where its diameter is right.</param>
/// <param name="FromTables">It was found in the size tables, which know no load and no speed.</param>
public sealed record ReplacementCandidate(Marking Marking, IReadOnlyList<string> Marks, RimStamp? Rim, bool FromTables);

/// <summary>What the speedometer showed at a true speed, with the tyres that are on.</summary>
public sealed record SpeedometerReading(Speed Shown, Speed True);

/// <summary>What is asked about a replacement.</summary>
/// <param name="Candidates">The tyres to judge.</param>
/// <param name="Axles">The axles that get them, from 1.</param>
/// <param name="NewTread">Tread depth of the new tyres, or null.</param>
/// <param name="Speedometer">A reading of the speedometer, or null.</param>
public sealed record ReplacementRequest(IReadOnlyList<ReplacementCandidate> Candidates, IReadOnlyList<int> Axles, Length? NewTread, SpeedometerReading? Speedometer)
{
    /// <summary>The one of the candidates that somebody chose, or null.</summary>
    public ReplacementCandidate? Chosen { get; init; }
}

/// <summary>The sizes that the tables carry for a rim.</summary>
public static class CarriedSizes
{
    /// <summary>
    /// Every carried size of the placard's kind for a rim diameter, the placard's own first, then by how near their diameters are to it.
    /// </summary>
    /// <param name="placard">The placard's size.</param>
    /// <param name="rimDiameterInches">The rim's diameter code, or null for the placard's.</param>
    /// <source>the size tables and the rim range table of this engine, each row with its own source</source>
    public static IReadOnlyList<ReplacementCandidate> For(SizeDesignation placard, double? rimDiameterInches)
    {
        ArgumentNullException.ThrowIfNull(placard);
        var rim = rimDiameterInches ?? placard.RimDiameterInches;
        return [.. SizeTable.Sizes.Concat(RimRanges.Sizes).Distinct(StringComparer.Ordinal)
            .Select(text => MarkingReader.Read(text).Value)
            .Where(m => m.Size.TyreClass == placard.TyreClass && m.Size.Prefix == placard.Prefix && IsMetric(m.Size) == IsMetric(placard) && m.Size.RimDiameterInches is { } own && own == rim && m.Size.OverallDiameter is not null)
            .OrderBy(m => placard.OverallDiameter is { } diameter ? Math.Abs(m.Size.OverallDiameter!.Value.Millimetres - diameter.Millimetres) : 0)
            .ThenBy(m => m.Size.Text, StringComparer.Ordinal)
            .Select(m => new ReplacementCandidate(m, [], null, true))];
    }

    private static bool IsMetric(SizeDesignation size) => size.Family is MarkingFamily.Metric or MarkingFamily.MetricWithoutAspect;
}
