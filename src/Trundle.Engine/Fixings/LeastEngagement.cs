using Trundle.Engine.Findings;
using Trundle.Engine.InUse;
using Trundle.Engine.Reference;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Engine.Fixings;

/// <summary>What the engagement of a fixing is held against, by rule.</summary>
/// <param name="Rule">The rule's name.</param>
/// <param name="Least">The least engagement, with its source.</param>
/// <param name="Breached">True where there is less.</param>
public sealed record EngagementLimit(string Rule, Limit Least, bool Breached);

/// <summary>How much thread must be in thread, so that the stud breaks before the thread strips.</summary>
public static class LeastEngagement
{
    /// <summary>
    /// L = 2·A_t / (π·K·[½ + tan 30°·(E − K)/P]) with K the greatest minor diameter of the internal thread and E the least pitch diameter of the
    /// external one: stud and nut of equal strength then break before they strip. It is a theoretical floor, not a setting.
    /// </summary>
    /// <param name="thread">The thread.</param>
    /// <returns>The length, or null where the limits of size of this thread are not carried.</returns>
    /// <source>ASME B1.1 appendix B and FED-STD-H28 (formula from memory, recomputed); limits of size: ISO 965 for the external metric threads (read), the others from memory</source>
    public static Length? AgainstStripping(ThreadDesignation thread)
    {
        ArgumentNullException.ThrowIfNull(thread);
        var key = $"fixings.limits.{thread.Text.Replace('/', '-')}";
        if (Figures.List.FirstOrDefault(f => f.Key == $"{key}.pitch-diameter") is not { } pitchDiameter)
        {
            return null;
        }

        var external = pitchDiameter.As<Length>();
        var inner = Figures.Of($"{key}.nut-minor").As<Length>();
        var overlap = 0.5 + (Math.Tan(Math.PI / 6) * ((external - inner) / thread.Pitch));
        return Length.FromMetres(2 * thread.StressArea().Si / (Math.PI * inner.Metres * overlap));
    }

    /// <summary>The customary least engagement in steel: so many thread diameters.</summary>
    /// <source>common practice (from memory)</source>
    public static Length Customary(ThreadDesignation thread)
    {
        ArgumentNullException.ThrowIfNull(thread);
        return thread.Diameter * Figures.Of("fixings.engagement-diameters").Value;
    }

    /// <summary>The limits that an engagement is held against, the strictest source first: the maker's own, stripping, the customary one.</summary>
    /// <param name="fixings">With an engagement; nothing is held against anything without one, or where turns cannot be told from a length.</param>
    /// <source>each limit names its own</source>
    public static IReadOnlyList<EngagementLimit> Of(FixingSet fixings)
    {
        ArgumentNullException.ThrowIfNull(fixings);
        if (fixings.Engagement is not { } engagement)
        {
            return [];
        }

        var limits = new List<EngagementLimit>();
        if (fixings.LeastEngagement is { } maker && Below(engagement, maker, fixings.Thread) is { } below)
        {
            limits.Add(new EngagementLimit("fixings.engagement-maker", new Limit(Amount.Word(maker.Text), Source.Entered("the maker's least engagement, as entered")), below));
        }

        if (fixings.Thread is { } thread && engagement.On(thread) is { } length)
        {
            if (AgainstStripping(thread) is { } stripping)
            {
                limits.Add(new EngagementLimit("fixings.engagement-stripping", Written(thread, stripping, new Source("ASME B1.1 appendix B and FED-STD-H28", SourceStatus.FromMemory)), length < stripping));
            }

            var customary = Customary(thread);
            limits.Add(new EngagementLimit("fixings.engagement", Written(thread, customary, Figures.Of("fixings.engagement-diameters").Source), length < customary));
        }

        return limits;
    }

    /// <summary>The findings where a thread is engaged too little; of several limits that are broken the gravest speaks.</summary>
    /// <source>the limits of <see cref="Of"/>; the categories of <c>in-use-rules.csv</c></source>
    public static Finding? Finding(FixingSet fixings) =>
        Of(fixings).Where(l => l.Breached).Select(l => (Limit: l, Rule: RulesInForce.Carried.OfTrade(l.Rule))).OrderByDescending(l => l.Rule.Category).FirstOrDefault() is { Rule: { } rule } worst
            ? new Finding(rule.Rule, rule.Category, null, Written(fixings), worst.Limit.Least, rule.Source, rule.Action)
            : null;

    /// <summary>An engagement with its other form beside it.</summary>
    internal static Amount Written(FixingSet fixings)
    {
        var engagement = fixings.Engagement!;
        return Amount.Word("engaged " + (fixings.Thread is { } thread ? engagement.Turns is not null ? $"{engagement.Text} ({engagement.On(thread)!.Value.Text("mm", 1)})" : $"{engagement.Text} ({Turns(thread, engagement.Measured!.Value)})" : engagement.Text));
    }

    private static Limit Written(ThreadDesignation thread, Length least, Source source) =>
        new(new Amount(least.Millimetres, "mm", $"{least.Text("mm", 1)} ({Turns(thread, least)})"), source);

    private static string Turns(ThreadDesignation thread, Length length) => $"{Quantity.Number(length / thread.Pitch, 1)} turns";

    private static bool? Below(Engagement found, Engagement least, ThreadDesignation? thread) =>
        found.Turns is { } turns && least.Turns is { } leastTurns ? turns < leastTurns
        : found.On(thread) is { } length && least.On(thread) is { } leastLength ? length < leastLength
        : null;
}
