using Trundle.Web.Client.Entries;

namespace Trundle.Web.Client.Tools.Match;

/// <summary>What is matched on: the keys of its amount and its place in the file, and how it is typed.</summary>
/// <param name="Key">Under a tyre or a wheel; in a file of mountings it is 'assembly'.</param>
/// <param name="AmountKey">The amount.</param>
/// <param name="PlaceKey">Where it is high or heavy.</param>
/// <param name="Amount">What the amount is called.</param>
/// <param name="Place">What the place is called.</param>
/// <param name="Habit">In which unit a bare number is taken.</param>
public sealed record MatchKind(string Key, string AmountKey, string PlaceKey, string Amount, string Place, Habit Habit)
{
    /// <summary>
    /// A set of more tyres or wheels than this is matched when it is asked for, and only so many of its pairs are drawn at once: a browser takes seconds for sixty,
    /// and an entry must not wait for them.
    /// </summary>
    public const int LargeSet = 12;

    /// <summary>A set of so many holds the browser's one thread long enough to be felt: the page says that it reckons before it does.</summary>
    public const int SlowSet = 8;

    /// <summary>Radial force variation.</summary>
    public static MatchKind Force { get; } = new("force", "amplitude", "highPoint", "Force variation", "High point", new(HabitKind.Force, "N"));

    /// <summary>Radial runout.</summary>
    public static MatchKind Runout { get; } = new("runout", "amplitude", "highPoint", "Runout", "High point", new(HabitKind.Dial, "mm"));

    /// <summary>Unbalance.</summary>
    public static MatchKind Unbalance { get; } = new("unbalance", "amount", "heavyPoint", "Unbalance", "Heavy place", new(HabitKind.Unbalance, "g·mm"));

    /// <summary>The kind of a file's word; force variation where none is chosen.</summary>
    public static MatchKind Of(string? on) => on switch { "runout" => Runout, "unbalance" => Unbalance, _ => Force };
}
