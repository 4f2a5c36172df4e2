using Trundle.Engine.Practice;

namespace Trundle.Web.Client.Practice;

/// <summary>The addresses of practice: /bay/practice/wheel/(level)/(number)/(sheet) and /bay/practice/drill/(drill)/(number).</summary>
public static class PracticeWords
{
    /// <summary>The list of all practice.</summary>
    public const string All = "/bay/practice";

    /// <summary>A practice wheel or a drill.</summary>
    public static string Of(PracticeKind kind, int seed)
    {
        ArgumentNullException.ThrowIfNull(kind);
        return FormattableString.Invariant($"{All}/{kind.Key}/{seed}");
    }

    /// <summary>A practice wheel.</summary>
    public static string Wheel(string level, int seed, string? part = null) => FormattableString.Invariant($"{All}/wheel/{level}/{seed}{(part is null ? "" : $"/{part}")}");

    /// <summary>A drill.</summary>
    public static string Drill(string key, int seed) => FormattableString.Invariant($"{All}/drill/{key}/{seed}");

    /// <summary>A number that nobody chose.</summary>
    public static int AnySeed() => Random.Shared.Next(1, 1_000_000);
}
