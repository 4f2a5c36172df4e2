using Trundle.Engine.InUse;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Engine.Condition;

/// <summary>The central band of a tread in which a puncture may be repaired.</summary>
/// <param name="Width">The nominal section width.</param>
/// <param name="Share">Which share of it the band is.</param>
public sealed record RepairArea(Length Width, InUseLimit Share)
{
    /// <summary>The whole width of the band, half of it on each side of the middle.</summary>
    public Length Band => Width * (Share.Value / 100);

    /// <summary>The band of the tyre at a position: 60 % of the nominal section width to 155 mm, 65 % over 155 to 200 mm, 70 % over 200 mm, or as the workshop put it right.</summary>
    /// <param name="subject">The vehicle with what is fitted.</param>
    /// <param name="position">Where.</param>
    /// <returns>The band, or null for other classes than a car's, van's or light truck's and where the size marks no width.</returns>
    /// <source>BS AU 159g, minor repairs of car and light van tyres, in the summary of BTMA (read)</source>
    public static RepairArea? Of(FittedVehicle subject, Position position)
    {
        ArgumentNullException.ThrowIfNull(subject);
        return subject.At(position)?.Tyre?.Marking?.Size.SectionWidth is { } width && subject.InForce.LimitOrNone("damage.puncture.edge", new RulePoint(subject, position)) is { } share
            ? new RepairArea(width, share)
            : null;
    }
}
