using Trundle.Engine.Findings;
using Trundle.Engine.InUse;
using Trundle.Engine.Vehicles;

namespace Trundle.Engine.Condition;

/// <summary>The least tread depth that holds at a wheel.</summary>
public static class TreadLimits
{
    /// <summary>The names under which a rule set has its least depth; for one vehicle at one place it has one of them.</summary>
    private static readonly string[] Rules = ["tread.depth", "tread.depth.heavy-front", "tread.depth.heavy"];

    /// <summary>The law's own limit, or null where no rules are chosen or theirs do not cover the vehicle.</summary>
    /// <source>each limit names its own</source>
    public static InUseLimit? OfLaw(FittedVehicle subject, Position position)
    {
        ArgumentNullException.ThrowIfNull(subject);
        var at = new RulePoint(subject, position);
        return Rules.Select(rule => subject.InForce.LawLimit(rule, at)).FirstOrDefault(limit => limit is not null);
    }

    /// <summary>The limit that stands in where the law has none.</summary>
    /// <source>the limit names its own</source>
    public static InUseLimit OfTrade(FittedVehicle subject, Position position)
    {
        ArgumentNullException.ThrowIfNull(subject);
        return subject.InForce.TradeLimit(Rules[0], new RulePoint(subject, position));
    }

    /// <summary>The strictest: the law's or the trade's, or a greater one of the workshop at which a tyre does not stay.</summary>
    /// <source>each limit names its own; of several known limits the strictest holds (common practice)</source>
    public static InUseLimit Strictest(FittedVehicle subject, Position position)
    {
        ArgumentNullException.ThrowIfNull(subject);
        var at = new RulePoint(subject, position);
        return subject.InForce.Added
            .Where(own => own.Limit is { Quantity: JudgedQuantity.TreadDepth, IsFloor: true } && own.Rule.Category >= Category.Refer && own.HoldsAt(at))
            .Select(own => own.Limit)
            .Append(OfLaw(subject, position) ?? OfTrade(subject, position))
            .MaxBy(limit => limit.Compared)!;
    }
}
