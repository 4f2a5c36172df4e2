namespace Trundle.Visits.Pictures;

/// <summary>How a leg stands, as a mark beside its name.</summary>
public enum LegStanding
{
    /// <summary>Nothing left to do on it.</summary>
    Done,

    /// <summary>The work is here.</summary>
    Now,

    /// <summary>Something was entered, something is still needed.</summary>
    Begun,

    /// <summary>Still to come.</summary>
    Open,

    /// <summary>A step on it was recorded as not passed.</summary>
    Stopped,
}

/// <summary>The marks of the legs: a tick, a solid triangle, a half ring, a ring, a barred ring. The words stand beside them for a screen reader.</summary>
public static class LegMark
{
    /// <summary>The mark, 18 by 18.</summary>
    public static string Draw(LegStanding standing) =>
        $"""<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 18 18" width="18" height="18" aria-hidden="true" focusable="false">{Inside(standing)}</svg>""";

    /// <summary>The words of a standing.</summary>
    public static string Words(LegStanding standing) => standing switch
    {
        LegStanding.Done => "done",
        LegStanding.Now => "now",
        LegStanding.Begun => "begun",
        LegStanding.Open => "to come",
        LegStanding.Stopped => "stopped",
    };

    private static string Inside(LegStanding standing) => standing switch
    {
        LegStanding.Done => """<path d="M2.5 9.5l4 4.5L15.5 3.5" fill="none" stroke="var(--ink,#1c2430)" stroke-width="2.25"/>""",
        LegStanding.Now => """<path d="M4 2.5v13l11-6.5z" fill="var(--accent,#0b5563)"/>""",
        LegStanding.Begun => """<circle cx="9" cy="9" r="5.5" fill="none" stroke="var(--control,#71757d)" stroke-width="1.75"/><path d="M9 3.5a5.5 5.5 0 0 0 0 11z" fill="var(--control,#71757d)"/>""",
        LegStanding.Open => """<circle cx="9" cy="9" r="5.5" fill="none" stroke="var(--control,#71757d)" stroke-width="1.75"/>""",
        LegStanding.Stopped => """<circle cx="9" cy="9" r="6.5" fill="none" stroke="var(--major-word,#ad4c00)" stroke-width="2"/><path d="M5 9h8" stroke="var(--major-word,#ad4c00)" stroke-width="2.25"/>""",
    };
}
