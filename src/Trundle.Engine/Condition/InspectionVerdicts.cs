using System.Globalization;
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
            yield return Part(subject, found, assembly, InspectedPart.Tyre, [.. assembly.Damage.Select((d, i) =>
                One(subject, i, DamageCheck.Measured(d).Text, InspectedPart.Tyre, book => DamageCheck.One(book, assembly, d)))]);
        }

        if (assembly.Wheel is { } wheel)
        {
            yield return Part(subject, found, assembly, InspectedPart.Wheel, [.. wheel.Damage.Select((d, i) =>
                One(subject, i, WheelDamageCheck.Word(d.Kind), InspectedPart.Wheel, book => WheelDamageCheck.One(book, assembly, d)))]);
        }

        if (assembly.Valve is not null)
        {
            yield return Part(subject, found, assembly, InspectedPart.Valve, []);
        }

        if (assembly.Sensor is SensorState.Working or SensorState.NotWorking || assembly.SensorParts is not null)
        {
            yield return Part(subject, found, assembly, InspectedPart.Sensor, []);
        }
    }

    private static DamageVerdict One(FittedVehicle subject, int index, string what, InspectedPart part, Action<CheckBook> check)
    {
        var book = new CheckBook(subject);
        check(book);
        var result = book.Result();
        var (verdict, reasons) = Gravest(result.Findings, part, subject.Rules);
        return new DamageVerdict(index, what, verdict, reasons, result.Needs);
    }

    private static PartVerdict Part(FittedVehicle subject, CheckResult found, Assembly assembly, InspectedPart part, IReadOnlyList<DamageVerdict> damage)
    {
        var (verdict, reasons) = Gravest(found.Findings.Where(f => IsOf(f, assembly.Position) || IsApart(subject, f, assembly)), part, subject.Rules);
        var limits = found.Needs.Where(n => reasons.Any(r => r.Rule is "pressure.above-class" or "pressure.placard-doubt") && part == InspectedPart.Tyre && n.What == PressureCeiling.Maximum && n.Position == assembly.Position.ToString());
        return new PartVerdict(assembly.Position, part, verdict, reasons, damage, [.. damage.SelectMany(d => d.Asked).Concat(limits).Distinct()], subject.Rules);
    }

    /// <summary>A finding of the place itself, of its axle or of two axles of which it is one; the spare answers for itself only, and the vehicle as a whole for no single tyre.</summary>
    private static bool IsOf(Finding finding, Position position)
    {
        if (finding.Position is not { } at || position.IsSpare || !at.StartsWith("axle", StringComparison.Ordinal))
        {
            return finding.Position == position.ToString();
        }

        return at.Split(' ').Contains(position.Axle.ToString(CultureInfo.InvariantCulture));
    }

    /// <summary>With all wheels driven and their treads or circumferences apart: the tyres with the most and with the least tread, or where these are not known or alike each of them.</summary>
    private static bool IsApart(FittedVehicle subject, Finding finding, Assembly assembly)
    {
        if (finding is not { Position: null, Rule: "tread.spread" or "circumference.all-wheel-drive" } || assembly.Position.IsSpare)
        {
            return false;
        }

        var treads = subject.Fitted.Where(a => !a.Position.IsSpare).Select(Tread.Mean).OfType<Measures.Length>().ToList();
        return Tread.Mean(assembly) is not { } own || (treads.Max() - treads.Min()).Millimetres <= CheckBook.Hair
            || own.Metres >= treads.Max().Metres || own.Metres <= treads.Min().Metres;
    }

    private static (Verdict Verdict, IReadOnlyList<Finding> Reasons) Gravest(IEnumerable<Finding> findings, InspectedPart part, RuleSet? set)
    {
        var reasons = findings
            .Where(f => f.Category > Category.None)
            .Select(f => (Finding: f, Verdict: Verdicts.Of(f, part, set)))
            .Where(r => r.Verdict is not null)
            .OrderByDescending(r => r.Verdict).ThenByDescending(r => r.Finding.Category)
            .ToList();
        return (reasons.Count == 0 ? Verdict.MayRun : reasons[0].Verdict!.Value, [.. reasons.Select(r => r.Finding)]);
    }
}
