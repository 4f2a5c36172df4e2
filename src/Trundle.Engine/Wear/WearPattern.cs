namespace Trundle.Engine.Wear;

/// <summary>How a tread is worn, as a shape across and around it.</summary>
public enum WearPattern
{
    /// <summary>Alike everywhere, within what ordinary wear scatters.</summary>
    Even,

    /// <summary>The centre is lower than both shoulders.</summary>
    Centre,

    /// <summary>Both shoulders are lower than the centre.</summary>
    BothShoulders,

    /// <summary>One shoulder is lower than the other.</summary>
    OneShoulder,

    /// <summary>Each rib is lower at one of its two edges, always the same one.</summary>
    Feather,

    /// <summary>Each block is lower at one of its edges, the one that meets the road first or the other.</summary>
    HeelAndToe,

    /// <summary>Dips one after another around the tyre.</summary>
    Cups,

    /// <summary>Dips that move across the tyre as they go around.</summary>
    Diagonal,

    /// <summary>One low place around the tyre.</summary>
    FlatSpot,

    /// <summary>None of these, or a reading that slipped.</summary>
    Other,
}

/// <summary>The patterns in the contract's words.</summary>
public static class WearPatternWords
{
    /// <summary>All patterns.</summary>
    public static IReadOnlyList<WearPattern> All { get; } = Enum.GetValues<WearPattern>();

    /// <summary>A pattern's word.</summary>
    /// <source>common practice: the trade's words for tread wear</source>
    public static string Word(this WearPattern pattern) => pattern switch
    {
        WearPattern.Even => "even",
        WearPattern.Centre => "centre",
        WearPattern.BothShoulders => "both-shoulders",
        WearPattern.OneShoulder => "one-shoulder",
        WearPattern.Feather => "feather",
        WearPattern.HeelAndToe => "heel-and-toe",
        WearPattern.Cups => "cups",
        WearPattern.Diagonal => "diagonal",
        WearPattern.FlatSpot => "flat-spot",
        WearPattern.Other => "other",
    };

    internal static WearPattern Of(string word) => All.First(p => p.Word() == word);
}
