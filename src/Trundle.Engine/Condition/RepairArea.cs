using Trundle.Engine.Findings;
using Trundle.Engine.Reference;
using Trundle.Engine.Sidewall;
using Trundle.Measures;

namespace Trundle.Engine.Condition;

/// <summary>The central band of a tread in which a puncture may be repaired.</summary>
/// <param name="Band">Its whole width, half of it on each side of the middle.</param>
/// <param name="Source">Where it comes from.</param>
public sealed record RepairArea(Length Band, Source Source)
{
    /// <summary>The band of a size: 60 % of the nominal section width to 155 mm, 65 % over 155 to 200 mm, 70 % over 200 mm.</summary>
    /// <param name="size">A car's, van's or light truck's size.</param>
    /// <returns>The band, or null for other classes and where the size marks no width.</returns>
    /// <source>BS AU 159g, minor repairs of car and light van tyres, in the summary of BTMA (read)</source>
    public static RepairArea? Of(SizeDesignation size)
    {
        ArgumentNullException.ThrowIfNull(size);
        if (size is not { SectionWidth: { } width, TyreClass: TyreClass.Passenger or TyreClass.Commercial or TyreClass.LightTruck })
        {
            return null;
        }

        var share = Figures.Of(
            UpTo(width, "condition.repair-width-narrow") ? "condition.repair-area-narrow"
            : UpTo(width, "condition.repair-width-middle") ? "condition.repair-area-middle"
            : "condition.repair-area-wide");
        return new RepairArea(width * (share.Value / 100), share.Source);
    }

    private static bool UpTo(Length width, string key) => width.Millimetres <= Figures.Of(key).As<Length>().Millimetres + 1e-6;
}
