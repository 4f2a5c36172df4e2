using System.Globalization;
using Trundle.Engine.Findings;
using Trundle.Measures;

namespace Trundle.Engine.Practice.Drills;

/// <summary>The drills beside the practice wheel.</summary>
public enum DrillKind
{
    /// <summary>What stands on a sidewall, and what it means.</summary>
    Sidewall,

    /// <summary>When a tyre was made, and how old it is.</summary>
    Tin,

    /// <summary>Whether a tread is deep enough.</summary>
    Tread,

    /// <summary>What becomes of a damaged tyre.</summary>
    Damage,

    /// <summary>What a gauge shows in the cold, and what to do with a warm tyre.</summary>
    PressureAtTemperature,

    /// <summary>Which rotation may be done.</summary>
    Rotation,

    /// <summary>Which constructions may stand together.</summary>
    Mixing,

    /// <summary>What to set on a wrench with an adapter.</summary>
    Adapter,
}

/// <summary>A thing told: its name and its text.</summary>
public sealed record Told(string Name, string Text);

/// <summary>One answer among several.</summary>
public sealed record DrillChoice(string Key, string Words);

/// <summary>An answer held against what the engine says.</summary>
/// <param name="Met">It is right.</param>
/// <param name="Required">What the engine says, in words.</param>
/// <param name="Feedback">What to do differently and why; empty where right.</param>
public sealed record HeldAnswer(bool Met, Limit? Required, string Feedback)
{
    /// <summary>A choice that maims in a real bay, or null.</summary>
    public SafetyStop? Stop { get; init; }
}

/// <summary>One question of a drill.</summary>
/// <param name="Criterion">What it is judged by and what it is worth; shown beforehand.</param>
/// <param name="Choices">The answers to choose from; empty where a value is typed.</param>
/// <param name="Unit">The unit of a typed value, empty for a plain number, null where it is chosen.</param>
/// <param name="Hold">Holds what was answered against what the engine says.</param>
public sealed record DrillQuestion(Criterion Criterion, IReadOnlyList<DrillChoice> Choices, string? Unit, Func<string, HeldAnswer> Hold);

/// <summary>A drill from a seed: what is told, what is asked. Its answers are worked out by the engine's own operations while it is made and judged.</summary>
/// <param name="Kind">Which.</param>
/// <param name="Seed">The seed that it was made from.</param>
/// <param name="Title">What it is called.</param>
/// <param name="Facts">What is told.</param>
/// <param name="Questions">What is asked; their points sum to 100.</param>
public sealed record Drill(DrillKind Kind, ulong Seed, string Title, IReadOnlyList<Told> Facts, IReadOnlyList<DrillQuestion> Questions)
{
    /// <summary>The object behind the facts, for a picture: a tread, a damage; null where there is none.</summary>
    public object? Drawn { get; init; }

    /// <summary>The criteria, to be shown before the first answer.</summary>
    public IReadOnlyList<Criterion> Criteria => [.. Questions.Select(q => q.Criterion)];

    /// <summary>Judges answers by the questions' keys; one that is missing is not met.</summary>
    public PracticeResult Judge(IReadOnlyDictionary<string, string> answers)
    {
        ArgumentNullException.ThrowIfNull(answers);
        var held = Questions.Select(q => (q.Criterion, Typed: answers.GetValueOrDefault(q.Criterion.Key, "").Trim(), q.Hold))
            .Select(q => (q.Criterion, q.Typed, Held: q.Typed.Length == 0 ? new HeldAnswer(false, null, "Nothing was answered.") : q.Hold(q.Typed)))
            .ToList();
        return new PracticeResult(
            [.. held.Select(h => new JudgedCriterion(h.Criterion, h.Held.Met, h.Typed.Length == 0 ? null : Amount.Word(h.Typed), h.Held.Required, h.Held.Feedback))],
            held.Select(h => h.Held.Stop).FirstOrDefault(s => s is not null));
    }
}

/// <summary>Questions of the usual shapes.</summary>
internal static class Asking
{
    /// <summary>A quantity to be typed, held within so much of the engine's.</summary>
    public static DrillQuestion Quantity<T>(Criterion criterion, T right, string unit, int decimals, double within, Source source, string why) where T : struct, IQuantity<T> => new(criterion, [], unit, typed =>
    {
        var limit = new Limit(Amount.Of(right, unit, decimals), source);
        var read = Measures.Quantity.Read<T>(typed, unit);
        return !read.IsRead ? new HeldAnswer(false, limit, read.Problem!.Message)
            : Math.Abs(read.Value.In(unit) - right.In(unit)) <= within * (1 + 1e-9) ? new HeldAnswer(true, limit, "")
            : new HeldAnswer(false, limit, $"It is {limit.Amount.Text}. {why}");
    });

    /// <summary>A plain number to be typed, held within so much.</summary>
    public static DrillQuestion Number(Criterion criterion, double right, int decimals, double within, Source source, string why) => new(criterion, [], "", typed =>
    {
        var limit = new Limit(Amount.Number(right, "", decimals), source);
        var read = NumberText.ReadStart(typed, out var consumed);
        return !read.IsRead || consumed < typed.Length ? new HeldAnswer(false, limit, $"'{NumberText.Shown(typed)}' is no plain number.")
            : Math.Abs(read.Value - right) <= within + 1e-9 ? new HeldAnswer(true, limit, "")
            : new HeldAnswer(false, limit, $"It is {limit.Amount.Text}. {why}");
    });

    /// <summary>A choice: the feedback of each wrong one by its key.</summary>
    public static DrillQuestion Choice(Criterion criterion, IReadOnlyList<DrillChoice> choices, Func<string, bool> right, Func<string, string> why, Source source, Func<string, SafetyStop?>? stop = null) => new(criterion, choices, null, typed =>
    {
        var chosen = choices.FirstOrDefault(c => c.Key == typed);
        var rights = string.Join(" or ", choices.Where(c => right(c.Key)).Select(c => c.Words));
        var limit = new Limit(Amount.Word(rights), source);
        return chosen is null ? new HeldAnswer(false, limit, $"'{NumberText.Shown(typed)}' is not among the answers.")
            : right(typed) ? new HeldAnswer(true, limit, "")
            : new HeldAnswer(false, limit, $"It is {rights}. {why(typed)}") { Stop = stop?.Invoke(typed) };
    });

    /// <summary>Yes or no.</summary>
    public static IReadOnlyList<DrillChoice> YesNo { get; } = [new("yes", "yes"), new("no", "no")];

    public static string Text(double value, int decimals) => Measures.Quantity.Number(value, decimals);

    public static string Text(IFormattable value) => value.ToString(null, CultureInfo.InvariantCulture);
}
