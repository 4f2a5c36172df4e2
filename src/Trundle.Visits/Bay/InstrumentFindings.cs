using Trundle.Engine.Findings;
using Trundle.Engine.Instruments;
using Trundle.Visits.Instruments;

namespace Trundle.Visits.Bay;

/// <summary>What the instruments that were used say of a visit: a value stands on what measured it, and a vehicle on what held it.</summary>
public static class InstrumentFindings
{
    private static readonly Source Record = Source.Entered("the instrument's record, as it stood when it was taken");

    /// <summary>The findings of the instruments used, on the day of the visit. Nothing is said of one whose record was not taken over.</summary>
    /// <param name="used">The instruments.</param>
    /// <param name="day">The visit's date, or null: then nothing is overdue.</param>
    public static IEnumerable<Finding> Of(IEnumerable<UsedInstrument> used, DateOnly? day)
    {
        ArgumentNullException.ThrowIfNull(used);
        return used.Where(u => u.Recorded).Select(u => Of(u, day)).OfType<Finding>();
    }

    private static Finding? Of(UsedInstrument used, DateOnly? day) =>
        used.Verdict is InstrumentVerdict.Failed or InstrumentVerdict.Undecided
            ? Made(used, Category.Major, $"{used.Name}: its check{(used.Checked is { } on ? $" of {Instrument.Day(on)}" : "")} was not passed", null, Again(used))
        : used.Due is { } due && day is { } today && due < today
            ? Made(used, Category.Major, $"{used.Name}: its check is overdue", new Limit(Amount.Word($"due {Instrument.Day(due)}"), Record), Again(used))
        : used.Verdict is null or InstrumentVerdict.NotJudged
            ? Made(used, Category.Refer, $"{used.Name}: no check of it was ever judged", null, Again(used))
        : null;

    private static Finding Made(UsedInstrument used, Category category, string measured, Limit? limit, string action) =>
        new($"instrument.{used.Use.Kind.Word().Replace(' ', '-')}", category, null, Amount.Word(measured), limit, Record, action);

    private static string Again(UsedInstrument used) => used.Use.Kind switch
    {
        InstrumentKind.TorqueWrench => "Set every fixing again with a wrench whose check is in order, or decide with the reason.",
        InstrumentKind.PressureGauge or InstrumentKind.DepthGauge => "Measure again with a gauge whose check is in order, or decide with the reason.",
        InstrumentKind.Balancer => "Check the balance again on a balancer whose check is in order, or decide with the reason.",
        InstrumentKind.Lift or InstrumentKind.Jack or InstrumentKind.Stands or InstrumentKind.MountingMachine or InstrumentKind.InflationGear or InstrumentKind.Cage or InstrumentKind.Other =>
            "Take it out of use until it is inspected, and decide what that means for this vehicle.",
    };
}
