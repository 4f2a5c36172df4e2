using System.Globalization;
using Trundle.Engine.Findings;
using Trundle.Engine.Reference;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Engine.InUse;

/// <summary>How a value must stand to its limit.</summary>
public enum Comparison
{
    /// <summary>Broken below it.</summary>
    AtLeast,

    /// <summary>Broken at it and below.</summary>
    Above,

    /// <summary>Broken above it.</summary>
    AtMost,

    /// <summary>Broken at it and above.</summary>
    Below,
}

/// <summary>The number of a rule: what it judges, how it is compared, and the vehicles, places and dates for which it holds.</summary>
/// <param name="Id">Its own name, by which a workshop's correction knows it.</param>
/// <param name="Rule">The rule whose number it is.</param>
/// <param name="Set">Whose, or null for the trade's or a workshop's.</param>
/// <param name="Country">The country, two letters, or null for every one of the rule set.</param>
/// <param name="Quantity">What it judges.</param>
/// <param name="Holds">How a value must stand to it.</param>
/// <param name="Value">The number in <paramref name="Unit"/>; a winter mark by its rank.</param>
/// <param name="Unit">The unit as the source has it.</param>
/// <param name="Scope">Vehicles and places.</param>
/// <param name="Dates">Dates.</param>
/// <param name="What">What it is, in a sentence for people.</param>
/// <param name="Source">Where it comes from.</param>
public sealed record InUseLimit(
    string Id, string Rule, RuleSet? Set, string? Country, JudgedQuantity Quantity, Comparison Holds, double Value, string Unit,
    RuleScope Scope, RuleDates Dates, string What, Source Source)
{
    /// <summary>Two values nearer than this, in the quantity's unit of comparison, are one: the last digits of arithmetic, far below any gauge.</summary>
    public const double Hair = 1e-6;

    /// <summary>The number in the unit in which the quantity's values are compared.</summary>
    public double Compared => JudgedQuantities.Unit(Quantity) switch
    {
        "mm" => Measures.Quantity.Of<Length>(Value, Unit).Millimetres,
        "kPa" => Measures.Quantity.Of<GaugePressure>(Value, Unit).Kilopascals,
        "°" => Measures.Quantity.Of<Angle>(Value, Unit).Degrees,
        _ => Value,
    };

    /// <summary>True where a value, in the quantity's unit of comparison, breaks it.</summary>
    public bool IsBrokenBy(double value) => Holds switch
    {
        Comparison.AtLeast => value < Compared - Hair,
        Comparison.Above => value <= Compared + Hair,
        Comparison.AtMost => value > Compared + Hair,
        Comparison.Below => value >= Compared - Hair,
    };

    /// <summary>True where it asks for a great value rather than a small one.</summary>
    public bool IsFloor => Holds is Comparison.AtLeast or Comparison.Above;

    /// <summary>True where it is broken by all that breaks another limit of the same direction, and by more.</summary>
    public bool IsStricterThan(InUseLimit other)
    {
        ArgumentNullException.ThrowIfNull(other);
        var by = IsFloor ? Compared - other.Compared : other.Compared - Compared;
        return by > Hair || (by >= -Hair && Holds is (Comparison.Above or Comparison.Below) && other.Holds is (Comparison.AtLeast or Comparison.AtMost));
    }

    /// <summary>As a person reads it: <c>1.6 mm</c>.</summary>
    public string Text => Quantity == JudgedQuantity.WinterMark
        ? JudgedQuantities.Mark((int)Value)
        : Unit == "°" ? $"{Value.ToString("0.#####", CultureInfo.InvariantCulture)}°"
        : $"{Value.ToString(Unit == "mm" ? "0.0####" : "0.#####", CultureInfo.InvariantCulture)} {Unit}";

    /// <summary>The limit that stands in a finding.</summary>
    public Limit Limit => new(Quantity == JudgedQuantity.WinterMark ? Amount.Word(Text) : new Amount(Value, Unit, Text), Source);

    /// <summary>True where it holds at a point, on the subject's date.</summary>
    public bool HoldsAt(RulePoint at)
    {
        ArgumentNullException.ThrowIfNull(at);
        return (Country is null || Country == at.Subject.Country) && Dates.Hold(at.Subject.Date) && Scope.Holds(at);
    }
}

/// <summary>The limits as they are carried (<c>in-use-limits.csv</c>).</summary>
public static class InUseLimits
{
    /// <summary>The words for how a value stands to its limit.</summary>
    public static IReadOnlyList<(string Word, Comparison Value)> Comparisons { get; } =
        [("at least", Comparison.AtLeast), ("above", Comparison.Above), ("at most", Comparison.AtMost), ("below", Comparison.Below)];

    /// <summary>Every limit in the order of the table.</summary>
    public static IReadOnlyList<InUseLimit> List { get; } = Load();

    /// <summary>The countries whose own rules are held here.</summary>
    public static IReadOnlyList<string> Countries { get; } = [.. List.Select(l => l.Country).OfType<string>().Distinct().Order(StringComparer.Ordinal)];

    private static List<InUseLimit> Load()
    {
        var table = CsvTable.Embedded("in-use-limits.csv");
        return [.. table.Rows.Select(row => Read(table, row))];
    }

    private static InUseLimit Read(CsvTable table, string[] row)
    {
        var quantity = JudgedQuantities.Words.Single(w => w.Word == table.Cell(row, "quantity")).Value;
        var (value, unit) = JudgedQuantities.ReadLimit(quantity, $"{table.Cell(row, "value")} {table.Cell(row, "unit")}").Value;
        return new InUseLimit(
            table.Cell(row, "id"),
            table.Cell(row, "rule"),
            RuleSetWords.Read(table.Cell(row, "set")),
            table.Cell(row, "country") is { Length: > 0 } country ? country : null,
            quantity,
            Comparisons.Single(c => c.Word == table.Cell(row, "holds")).Value,
            value,
            unit,
            new RuleScope(RuleScope.ClassesOf(table.Cell(row, "classes")), RuleScope.Places.Single(p => p.Word == table.Cell(row, "place")).Value),
            new RuleDates(RuleDates.Day(table.Cell(row, "from")), RuleDates.Day(table.Cell(row, "until")), table.Cell(row, "season") is { Length: > 0 } season ? Season.Read(season).Value : null),
            table.Cell(row, "what"),
            new Source(table.Cell(row, "source"), Source.StatusOf(table.Cell(row, "status")) ?? throw new InvalidOperationException($"The status of '{table.Cell(row, "id")}' is not a known word.")));
    }
}
