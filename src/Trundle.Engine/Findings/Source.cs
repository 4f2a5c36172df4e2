namespace Trundle.Engine.Findings;

/// <summary>How a figure came to be here.</summary>
public enum SourceStatus
{
    /// <summary>Read in the text that is named.</summary>
    Read,

    /// <summary>Read in another text that quotes the one that is named.</summary>
    SecondHand,

    /// <summary>From memory, not checked against the text.</summary>
    FromMemory,

    /// <summary>Computed from a stated rule.</summary>
    Calculated,
}

/// <summary>Where a figure or a rule comes from.</summary>
/// <param name="Text">Document and clause or page, or <c>common practice</c>.</param>
/// <param name="Status">How it came to be here.</param>
public sealed record Source(string Text, SourceStatus Status)
{
    /// <summary>The words that stand for a fact of the trade that no text is held for.</summary>
    public const string CommonPracticeText = "common practice";

    /// <summary>What was entered on this visit: the placard, the marking, the maker's figure as typed by a person.</summary>
    public static Source Entered(string what) => new(what, SourceStatus.Read);

    /// <summary>A fact of the trade for which no text is held: nothing was read, at first or second hand.</summary>
    public static Source CommonPractice { get; } = new(CommonPracticeText, SourceStatus.FromMemory);

    /// <summary>The status in the contract's words.</summary>
    public string StatusText => Status switch
    {
        SourceStatus.Read => "read",
        SourceStatus.SecondHand => "second-hand",
        SourceStatus.FromMemory => "from memory",
        SourceStatus.Calculated => "calculated",
    };

    /// <summary>As a person reads it beside a figure: a figure from memory says so.</summary>
    public string ForPeople => Status == SourceStatus.FromMemory && Text != CommonPracticeText
        ? $"{Text} (from memory, not checked against the text)"
        : Text;

    /// <summary>Reads a status in the contract's words.</summary>
    public static SourceStatus? StatusOf(string text) => text switch
    {
        "read" => SourceStatus.Read,
        "second-hand" => SourceStatus.SecondHand,
        "from memory" or "memory" => SourceStatus.FromMemory,
        "calculated" or "calc" => SourceStatus.Calculated,
        _ => null,
    };
}

/// <summary>A measured or limiting amount with its unit and its words.</summary>
/// <param name="Value">The number in <paramref name="Unit"/>, or null where the amount is a word, such as a construction.</param>
/// <param name="Unit">The unit's symbol, or empty.</param>
/// <param name="Text">As a person reads it.</param>
public sealed record Amount(double? Value, string Unit, string Text)
{
    /// <summary>An amount that is a word.</summary>
    public static Amount Word(string text) => new(null, "", text);

    /// <summary>A quantity in a unit, written with so many decimals.</summary>
    public static Amount Of<T>(T quantity, string unit, int decimals) where T : struct, Measures.IQuantity<T> =>
        new(Measures.Quantity.In(quantity, unit), unit, Measures.Quantity.Text(quantity, unit, decimals));

    /// <summary>A plain number.</summary>
    public static Amount Number(double value, string unit, int decimals) =>
        new(value, unit, unit.Length == 0 ? Measures.Quantity.Number(value, decimals) : $"{Measures.Quantity.Number(value, decimals)} {unit}");
}

/// <summary>A limit: an amount and where it comes from.</summary>
public sealed record Limit(Amount Amount, Source Source);
