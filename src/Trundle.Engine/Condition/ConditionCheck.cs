using Trundle.Engine.Findings;
using Trundle.Engine.Fitment;
using Trundle.Engine.Vehicles;
using Trundle.Engine.Wear;

namespace Trundle.Engine.Condition;

/// <summary>What state the tyres of a vehicle are in.</summary>
public static class ConditionCheck
{
    /// <summary>
    /// Judges tread depths against the chosen rules, age from the TIN on the date, damages of tyres and wheels, repairability, valves and
    /// sensors, pressures found against the placard, tread spread with all wheels driven, and says how each tread is worn
    /// where that is likelier uneven than even.
    /// </summary>
    /// <param name="subject">The vehicle with what is fitted; without rules only the trade's are applied, without a date no age is told.</param>
    /// <returns>Every result, passes with category none, and what is needed where data was left out.</returns>
    /// <source>the rules of <c>in-use-rules.csv</c> and the limits of <c>in-use-limits.csv</c>, the figures of <c>condition.figures.csv</c>, each with its own source</source>
    public static CheckResult Run(FittedVehicle subject)
    {
        ArgumentNullException.ThrowIfNull(subject);
        var book = new CheckBook(subject);
        foreach (var assembly in FitmentCheck.InOrder(subject))
        {
            if (assembly.Tyre is null)
            {
                book.Need(assembly.Position.ToString(), "the tyre: marking and TIN", "its condition is judged");
            }

            TreadCheck.Check(book, assembly);
            WinterCheck.Mark(book, assembly);
            AgeCheck.Check(book, assembly);
            DamageCheck.Check(book, assembly);
            RepairCheck.Check(book, assembly);
            WheelDamageCheck.Check(book, assembly);
            ValveCheck.Check(book, assembly);
            PressureFound.Check(book, assembly);
        }

        WearFindings.Add(book);
        TreadSpread.Check(book);
        WinterCheck.Country(book);
        return book.Result();
    }
}
