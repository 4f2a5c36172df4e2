namespace Trundle.Visits.Bay;

/// <summary>What can maim somebody who has not learnt it: before it a trainee needs an instructor's permission on that visit.</summary>
public enum HazardousAct
{
    /// <summary>The vehicle is lifted.</summary>
    Lift,

    /// <summary>Beads are broken, the tyre comes off its rim or goes on.</summary>
    Demount,

    /// <summary>A tyre gets its first air.</summary>
    Inflate,
}

/// <summary>The words of the hazardous acts.</summary>
public static class HazardousActWords
{
    /// <summary>All of them, in the order of the work.</summary>
    public static IReadOnlyList<HazardousAct> All { get; } = [HazardousAct.Lift, HazardousAct.Demount, HazardousAct.Inflate];

    /// <summary>As in files.</summary>
    public static string Key(this HazardousAct act) => act switch
    {
        HazardousAct.Lift => "lift",
        HazardousAct.Demount => "demount",
        HazardousAct.Inflate => "inflate",
    };

    /// <summary>As in a sentence: "a permission for …".</summary>
    public static string ForPeople(this HazardousAct act) => act switch
    {
        HazardousAct.Lift => "lifting",
        HazardousAct.Demount => "demounting and mounting",
        HazardousAct.Inflate => "the first inflation",
    };
}
