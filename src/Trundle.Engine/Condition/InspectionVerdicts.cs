using Trundle.Engine.Findings;
using Trundle.Engine.Fitment;
using Trundle.Engine.Vehicles;

namespace Trundle.Engine.Condition;

/// <summary>What becomes of each tyre, wheel, valve and sensor that was looked at: may run, repair, refer, renew or discard.</summary>
public static class InspectionVerdicts
{
    /// <summary>The verdict of every part that something was entered about, in the order of the positions.</summary>
    /// <param name="subject">The vehicle with what is fitted.</param>
    /// <param name="found">What its condition and fitment gave.</param>
    /// <source>verdicts.csv: common practice, from the text that each rule names; of several the gravest counts</source>
    public static IReadOnlyList<PartVerdict> Of(FittedVehicle subject, CheckResult found)
    {
        ArgumentNullException.ThrowIfNull(subject);
        ArgumentNullException.ThrowIfNull(found);
        return [.. FitmentCheck.InOrder(subject).SelectMany(a => Parts(subject, found, a))];
    }

    private static IEnumerable<PartVerdict> Parts(FittedVehicle subject, CheckResult found, Assembly assembly)
    {
        if (assembly.Tyre is not null || assembly.Damage.Count > 0)
        {
            yield return Part(found, assembly, InspectedPart.Tyre, [.. assembly.Damage.Select((d, i) =>
                One(subject, i, DamageCheck.Measured(d).Text, InspectedPart.Tyre, book => DamageCheck.One(book, assembly, d)))]);
        }

        if (assembly.Wheel is { } wheel)
        {
            yield return Part(found, assembly, InspectedPart.Wheel, [.. wheel.Damage.Select((d, i) =>
                One(subject, i, WheelDamageCheck.Word(d.Kind), InspectedPart.Wheel, book => WheelDamageCheck.One(book, assembly, d)))]);
        }

        if (assembly.Valve is not null)
        {
            yield return Part(found, assembly, InspectedPart.Valve, []);
        }

        if (assembly.Sensor is SensorState.Working or SensorState.NotWorking || assembly.SensorParts is not null)
        {
            yield return Part(found, assembly, InspectedPart.Sensor, []);
        }
    }

    private static DamageVerdict One(FittedVehicle subject, int index, string what, InspectedPart part, Action<CheckBook> check)
    {
        var book = new CheckBook(subject);
        check(book);
        var result = book.Result();
        var (verdict, reasons) = Gravest(result.Findings, part);
        return new DamageVerdict(index, what, verdict, reasons, result.Needs);
    }

    private static PartVerdict Part(CheckResult found, Assembly assembly, InspectedPart part, IReadOnlyList<DamageVerdict> damage)
    {
        var at = assembly.Position.ToString();
        var (verdict, reasons) = Gravest(found.Findings.Where(f => f.Position == at), part);
        return new PartVerdict(assembly.Position, part, verdict, reasons, damage, [.. damage.SelectMany(d => d.Asked).Distinct()]);
    }

    private static (Verdict Verdict, IReadOnlyList<Finding> Reasons) Gravest(IEnumerable<Finding> findings, InspectedPart part)
    {
        var reasons = findings
            .Select(f => (Finding: f, Verdict: Verdicts.Of(f, part)))
            .Where(r => r.Verdict is not null && r.Finding.Action != CheckBook.InOrder)
            .OrderByDescending(r => r.Verdict).ThenByDescending(r => r.Finding.Category)
            .ToList();
        return (reasons.Count == 0 ? Verdict.MayRun : reasons[0].Verdict!.Value, [.. reasons.Select(r => r.Finding)]);
    }
}
