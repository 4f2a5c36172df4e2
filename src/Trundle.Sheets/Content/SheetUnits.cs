using System.Text.RegularExpressions;
using Trundle.Engine.Vehicles;
using Trundle.Measures;
using Trundle.Visits.Bay;

namespace Trundle.Sheets;

/// <summary>Writes quantities for a sheet: the reader's unit first, and the other one in brackets where people of both will read it.</summary>
/// <param name="Habits">The units that come first.</param>
/// <param name="Miles">The road is counted in miles where the rules are those of a land of miles.</param>
internal sealed partial record SheetUnits(UnitHabits Habits, bool Miles)
{
    public static SheetUnits Of(UnitHabits? habits, RuleSet? rules) =>
        new(habits ?? (rules == RuleSet.UnitedStates ? new UnitHabits("psi", "32nds", "lbf·ft", "oz") : UnitHabits.Metric), rules is RuleSet.UnitedStates or RuleSet.UnitedKingdom);

    /// <summary>"230 kPa (33 psi)".</summary>
    public string Pressure(GaugePressure pressure) => Habits.Pressure == "psi"
        ? $"{pressure.Text("psi", 0)} ({pressure.Text("kPa", 0)})"
        : $"{pressure.Text(Habits.Pressure, Habits.Pressure == "bar" ? 2 : 0)} ({pressure.Text("psi", 0)})";

    /// <summary>"230 kPa".</summary>
    public string ShortPressure(GaugePressure pressure) => pressure.Text(Habits.Pressure, Habits.Pressure == "bar" ? 2 : 0);

    /// <summary>"120 N·m (89 lbf·ft)".</summary>
    public string Torque(Torque torque) => Habits.Torque == "lbf·ft"
        ? $"{torque.Text("lbf·ft", 0)} ({torque.Text("N·m", 0)})"
        : $"{torque.Text("N·m", 0)} ({torque.Text("lbf·ft", 0)})";

    /// <summary>"35 g".</summary>
    public string Mass(Mass mass) => Pictures.PolarPicture.Words(mass, Habits.Mass);

    /// <summary>A distance along the road as counted: whole kilometres, in a land of miles the miles first.</summary>
    public string Road(Length distance) => Miles
        ? $"{Thousands(distance.Miles)} mi ({Thousands(distance.Kilometres)} km)"
        : $"{Thousands(distance.Kilometres)} km";

    /// <summary>How far to go, from a round figure in kilometres: the miles are round too.</summary>
    public string ToGo(Length distance) => Miles
        ? $"{Thousands(Round(distance.Miles))} mi ({Thousands(distance.Kilometres)} km)"
        : $"{Thousands(distance.Kilometres)} km";

    /// <summary>"50 to 100 km"; "30 to 60 mi (50 to 100 km)".</summary>
    public string ToGo(Length from, Length to)
    {
        var kilometres = $"{Thousands(from.Kilometres)} to {Thousands(to.Kilometres)} km";
        return Miles ? $"{Thousands(Round(from.Miles))} to {Thousands(Round(to.Miles))} mi ({kilometres})" : kilometres;
    }

    /// <summary>
    /// A sentence of the engine, which speaks in kilopascals, millimetres and kilograms, in the units that come first; the engine's own beside them.
    /// </summary>
    public string InText(string text)
    {
        if (Habits.Pressure == "psi")
        {
            text = Kilopascals().Replace(text, m => Both(text, m, Typed<GaugePressure>(m, "kPa").Text("psi", 0)));
        }

        if (Miles)
        {
            text = Speeds().Replace(text, m => Both(text, m, Typed<Speed>(m, "km/h").Text("mph", 0)));
            text = Distances().Replace(text, m => Both(text, m, Typed<Length>(m, "km").Text("mi", 0)));
        }

        return Miles && Habits.Pressure == "psi" ? Kilograms().Replace(text, m => Both(text, m, Typed<Measures.Mass>(m, "kg").Text("lb", 0))) : text;
    }

    /// <summary>A size of a damage likewise: inches first where depths are told in parts of an inch.</summary>
    public string InDamageText(string text) => Habits.Depth == "mm" ? text : Millimetres().Replace(text, m => Both(text, m, Typed<Length>(m, "mm").Text("in", 2)));

    /// <summary>The reader's unit with the engine's beside it: in brackets, or behind a comma where brackets stand already.</summary>
    private static string Both(string text, Match engine, string first) => engine.Index > 0 && text[engine.Index - 1] == '(' ? $"{first}, {engine.Value}" : $"{first} ({engine.Value})";

    /// <summary>A sentence about tread likewise: a depth in 32nds of an inch, and each place's in a list.</summary>
    public string InTreadText(string text)
    {
        if (Habits.Depth == "mm")
        {
            return text;
        }

        text = Places().Replace(text, m => $"{m.Groups["place"].Value} {Thirty(Typed<Length>(m, "mm"))}{(m.Groups["unit"].Length > 0 ? "/32 in" : "")}");
        return Depths().Replace(text, m => $"{Thirty(Typed<Length>(m, m.Groups["unit"].Value))}/32 in");
    }

    /// <summary>32nds of an inch: whole where they are whole to a tenth of one.</summary>
    private static string Thirty(Length depth) => Quantity.Number(depth.In("32nds"), Math.Abs(depth.In("32nds") - Math.Round(depth.In("32nds"))) < 0.1 ? 0 : 1);

    private static T Typed<T>(Match m, string unit) where T : struct, IQuantity<T> => Quantity.Of<T>(double.Parse(m.Groups["n"].Value, System.Globalization.CultureInfo.InvariantCulture), unit);

    /// <summary>Two figures that count: to the five below a hundred, to the ten above it, to the hundred above a thousand.</summary>
    private static double Round(double miles)
    {
        var step = miles >= 1000 ? 100 : miles >= 100 ? 10 : 5;
        return Math.Round(miles / step) * step;
    }

    // What stands in brackets behind another unit was given in both already.
    [GeneratedRegex(@"(?<!(?:psi|bar) \((?:[0-9.]+ to )?)(?<![0-9.])(?<n>[0-9]+(?:\.[0-9]+)?) kPa", RegexOptions.CultureInvariant, 5000)]
    private static partial Regex Kilopascals();

    [GeneratedRegex(@"(?<!mph \()(?<![0-9.])(?<n>[0-9]+(?:\.[0-9]+)?) km/h", RegexOptions.CultureInvariant, 5000)]
    private static partial Regex Speeds();

    [GeneratedRegex(@"(?<!(?:mi \((?:[0-9.]+ to )?)|per )(?<![0-9.\u00a0])(?<n>[0-9]+(?:\.[0-9]+)?) km(?![/A-Za-z])", RegexOptions.CultureInvariant, 5000)]
    private static partial Regex Distances();

    [GeneratedRegex(@"(?<!in \()(?<![0-9.])(?<n>[0-9]+(?:\.[0-9]+)?) mm\b", RegexOptions.CultureInvariant, 5000)]
    private static partial Regex Millimetres();

    [GeneratedRegex(@"(?<!lb \()(?<![0-9.])(?<n>[0-9]+(?:\.[0-9]+)?) kg(?![·A-Za-z])", RegexOptions.CultureInvariant, 5000)]
    private static partial Regex Kilograms();

    [GeneratedRegex(@"(?<place>inner|centre|outer) (?<n>[0-9]+\.[0-9]+)(?<unit> mm)?", RegexOptions.CultureInvariant, 5000)]
    private static partial Regex Places();

    [GeneratedRegex(@"(?<![0-9./])(?<n>[0-9]+(?:\.[0-9]+)?) (?<unit>mm|in)\b(?! rim)", RegexOptions.CultureInvariant, 5000)]
    private static partial Regex Depths();

    private static string Thousands(double value) =>
        Math.Round(value).ToString("#,0", System.Globalization.CultureInfo.InvariantCulture).Replace(',', '\u00a0');
}
