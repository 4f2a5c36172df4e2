using Trundle.Engine.Reference;
using Trundle.Engine.Sidewall;
using Trundle.Engine.Vehicles;

namespace Trundle.Engine.Fitment;

/// <summary>The words of a sidewall in one spelling, from the marks entered and from the marking.</summary>
internal static class SidewallMarks
{
    private static readonly string[] RestrictedWords = ["NHS", "RACING ONLY", "FARM USE ONLY"];

    /// <summary>Parts of a longer mark that keep a tyre off the road.</summary>
    private static readonly string[] RestrictedParts = ["NHS", "NOT FOR HIGHWAY", "NOT FOR ROAD", "NOT FOR HIGHWAY USE", "RACING", "FARM USE", "COMPETITION", "OFF ROAD USE ONLY", "OFF-ROAD USE ONLY", "OFF HIGHWAY", "OFF-HIGHWAY"];

    /// <summary>True where the sidewall carries the word, in any of its spellings.</summary>
    public static bool Has(FittedTyre tyre, string word) => All(tyre).Any(m => m == word || SidewallWords.Of(m)?.Word == word);

    /// <summary>True where it is marked for winter, by declaration or by test.</summary>
    public static bool IsWinter(FittedTyre tyre) => Has(tyre, "M+S") || Has(tyre, "3PMSF") || Has(tyre, "ICE GRIP");

    /// <summary>True where it is built to run without air.</summary>
    public static bool IsRunFlat(FittedTyre tyre) => tyre.Marking?.Size.RunFlat == true || Has(tyre, "RUN FLAT");

    /// <summary>The mark that keeps the tyre off the road, or null.</summary>
    public static string? Restriction(FittedTyre tyre) =>
        All(tyre).FirstOrDefault(m => RestrictedWords.Contains(SidewallWords.Of(m)?.Word) || RestrictedParts.Any(part => part == "NHS" ? m.Split(' ').Contains("NHS") : m.Contains(part, StringComparison.Ordinal)));

    /// <summary>Every mark, upper case.</summary>
    public static IEnumerable<string> All(FittedTyre tyre) => tyre.Marks.Select(m => m.ToUpperInvariant()).Concat(tyre.Marking?.Words ?? []);

    /// <summary>The constructions that a tyre may have: one where it is known; diagonal or bias-belted where a '-' leaves it open; none where nothing is known.</summary>
    public static IReadOnlyList<Construction> Constructions(FittedTyre? tyre)
    {
        if (tyre?.ConstructionRead is { } read)
        {
            return [read];
        }

        if (tyre?.Marking?.Size is not { } size)
        {
            return [];
        }

        return !size.ConstructionToBeRead ? [size.Construction]
            : Has(tyre, "BIAS-BELTED") ? [Construction.BiasBelted]
            : Has(tyre, "DIAGONAL") ? [Construction.Diagonal]
            : Has(tyre, "RADIAL") ? [Construction.Radial]
            : [Construction.Diagonal, Construction.BiasBelted];
    }
}
