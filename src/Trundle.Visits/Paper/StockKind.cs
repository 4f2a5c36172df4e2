using Trundle.Measures;

namespace Trundle.Visits.Paper;

/// <summary>What a thing of the shop's stock is.</summary>
public enum StockKind
{
    /// <summary>A valve.</summary>
    Valve,

    /// <summary>A valve core.</summary>
    Core,

    /// <summary>A clip-on weight.</summary>
    Clip,

    /// <summary>An adhesive weight.</summary>
    Adhesive,

    /// <summary>A tyre.</summary>
    Tyre,

    /// <summary>A repair patch.</summary>
    Patch,

    /// <summary>Anything else.</summary>
    Other,
}

/// <summary>The words of the kinds, and the names of things.</summary>
public static class StockName
{
    private static readonly (string Word, StockKind Kind)[] Words =
        [("valve", StockKind.Valve), ("core", StockKind.Core), ("clip", StockKind.Clip), ("adhesive", StockKind.Adhesive), ("tyre", StockKind.Tyre), ("patch", StockKind.Patch), ("other", StockKind.Other)];

    /// <summary>Every kind with its word, in order.</summary>
    public static IReadOnlyList<(string Word, StockKind Kind)> All => Words;

    /// <summary>The word in a file.</summary>
    public static string Word(this StockKind kind) => Words.First(w => w.Kind == kind).Word;

    /// <summary>The kind of a word, or null.</summary>
    public static StockKind? KindOf(string? word) => Words.Where(w => w.Word == word).Select(w => (StockKind?)w.Kind).FirstOrDefault();

    /// <summary>As a person reads it.</summary>
    public static string InWords(this StockKind kind) => kind switch
    {
        StockKind.Valve => "valve",
        StockKind.Core => "valve core",
        StockKind.Clip => "clip-on weight",
        StockKind.Adhesive => "adhesive weight",
        StockKind.Tyre => "tyre",
        StockKind.Patch => "patch",
        StockKind.Other => "other",
    };

    /// <summary>True for a balance weight, which its kind and its mass name.</summary>
    public static bool IsWeight(this StockKind kind) => kind is StockKind.Clip or StockKind.Adhesive;

    /// <summary>As a person reads it: "clip-on weight 10 g", "valve: snap-in 43 mm".</summary>
    public static string Of(StockKind kind, string? item, Mass? mass) => (mass, item) switch
    {
        ({ } m, null) => $"{kind.InWords()} {Grams(m)}",
        ({ } m, { } name) => $"{kind.InWords()} {Grams(m)}, {name}",
        (null, { } name) => kind == StockKind.Other ? name : $"{kind.InWords()}: {name}",
        _ => kind.InWords(),
    };

    private static string Grams(Mass mass) => FormattableString.Invariant($"{Math.Round(mass.Grams, 1):0.#} g");

    /// <summary>What two names of one thing share: a weight its kind and mass to the tenth of a gram, another thing its kind and its name without blanks, in small letters.</summary>
    public static string Key(StockKind kind, string? item, Mass? mass) => kind.IsWeight() && mass is { } m
        ? FormattableString.Invariant($"{kind.Word()}|{Math.Round(m.Grams * 10)}")
        : $"{kind.Word()}|{string.Concat((item ?? "").Where(c => !char.IsWhiteSpace(c))).ToLowerInvariant()}";
}
