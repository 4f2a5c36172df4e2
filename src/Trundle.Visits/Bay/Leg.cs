namespace Trundle.Visits.Bay;

/// <summary>One stretch of a visit, in order.</summary>
public enum Leg
{
    /// <summary>Who and what came in, and why.</summary>
    Arrive,

    /// <summary>Wheel by wheel: marking, depths, pressure, damage.</summary>
    LookOver,

    /// <summary>What will be done.</summary>
    Plan,

    /// <summary>Wheels off: demount, mount, seat, balance.</summary>
    OffTheCar,

    /// <summary>Wheels on: hub face, fixings by hand, stages.</summary>
    Refit,

    /// <summary>Lowered: final torque, leak, road test.</summary>
    Prove,

    /// <summary>Signed and gone.</summary>
    HandBack,
}

/// <summary>The words of the legs.</summary>
public static class LegWords
{
    /// <summary>All legs in order.</summary>
    public static IReadOnlyList<Leg> All { get; } = [Leg.Arrive, Leg.LookOver, Leg.Plan, Leg.OffTheCar, Leg.Refit, Leg.Prove, Leg.HandBack];

    /// <summary>As on the page.</summary>
    public static string Title(this Leg leg) => leg switch
    {
        Leg.Arrive => "Arrive",
        Leg.LookOver => "Look over",
        Leg.Plan => "Plan",
        Leg.OffTheCar => "Off the car",
        Leg.Refit => "Refit",
        Leg.Prove => "Prove",
        Leg.HandBack => "Hand back",
    };

    /// <summary>As a key in files, answers and addresses.</summary>
    public static string Key(this Leg leg) => leg switch
    {
        Leg.Arrive => "arrive",
        Leg.LookOver => "lookOver",
        Leg.Plan => "plan",
        Leg.OffTheCar => "offTheCar",
        Leg.Refit => "refit",
        Leg.Prove => "prove",
        Leg.HandBack => "handBack",
    };

    /// <summary>The leg of a key, or null.</summary>
    public static Leg? Of(string key)
    {
        foreach (var leg in All)
        {
            if (string.Equals(leg.Key(), key, StringComparison.OrdinalIgnoreCase))
            {
                return leg;
            }
        }

        return null;
    }
}
