using System.Globalization;
using Trundle.Measures;

namespace Trundle.Engine.Fixings;

/// <summary>How far a fixing is on its thread: counted in turns from the first bite, or measured.</summary>
/// <param name="Turns">Whole and part turns, a pure number, or null where a length was measured.</param>
/// <param name="Measured">The length of thread in thread, or null where turns were counted.</param>
public sealed record Engagement(double? Turns, Length? Measured)
{
    private const double MostTurns = 60;
    private static readonly string[] TurnWords = ["turns", "turn"];

    /// <summary>Reads <c>7 turns</c>, <c>6.5</c> (turns) or <c>10.5 mm</c>.</summary>
    /// <source>own form: turns are what a hand counts on a closed nut, a length is what a rule shows at an open one</source>
    public static Reading<Engagement> Read(string? text)
    {
        var typed = (text ?? "").Trim();
        var turns = TurnWords.FirstOrDefault(w => typed.EndsWith(w, StringComparison.OrdinalIgnoreCase)) is { } word ? typed[..^word.Length].TrimEnd(' ', '\u00a0') : typed;
        if (NumberText.Read(turns) is { IsRead: true } number)
        {
            return number.Value is > 0 and <= MostTurns
                ? Reading<Engagement>.Of(new Engagement(number.Value, null))
                : Reading<Engagement>.Failed("engagement-out-of-range", $"'{NumberText.Shown(typed)}' turns cannot be: above 0 and at most {Quantity.Number(MostTurns, 0)} are expected.");
        }

        return Quantity.Read<Length>(typed) is { IsRead: true } length && length.Value.Millimetres is > 0 and <= 200
            ? Reading<Engagement>.Of(new Engagement(null, length.Value))
            : Reading<Engagement>.Failed("engagement-unreadable", $"'{NumberText.Shown(typed)}' is no engagement; write turns, such as \"7 turns\", or a length, such as \"10.5 mm\".");
    }

    /// <summary>The length of thread in thread, or null where turns were counted on a thread whose pitch is not known.</summary>
    public Length? On(ThreadDesignation? thread) => Measured ?? (thread is null ? null : thread.Pitch * Turns!.Value);

    /// <summary>As a file holds it, without rounding.</summary>
    public string Exact => Turns is { } turns ? string.Create(CultureInfo.InvariantCulture, $"{turns} turns") : string.Create(CultureInfo.InvariantCulture, $"{Measured!.Value.Millimetres} mm");

    /// <summary>As a person says it.</summary>
    public string Text => Turns is { } turns ? $"{Quantity.Number(turns, 1)} turns" : Measured!.Value.Text("mm", 1);
}
