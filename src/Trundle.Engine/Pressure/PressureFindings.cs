using Trundle.Engine.Condition;
using Trundle.Engine.Findings;
using Trundle.Engine.Reference;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Engine.Pressure;

/// <summary>What the pressures of an assembly amount to, as findings.</summary>
public static class PressureFindings
{
    /// <summary>
    /// The findings of one position: a rim of several pieces first, then its limits (overloaded, limits in conflict) and its reading (run low, low, high, hot, above the marked
    /// maximum). A reading on target is a finding of no deficiency.
    /// </summary>
    /// <param name="position">The position's pressures.</param>
    /// <source>run low and above the listed maxima: the rows of in-use-rules.csv; obviously underinflated is minor: Directive 2014/45/EU Annex I 5.2.3 (from memory); the rest common practice</source>
    public static IReadOnlyList<Finding> Of(PositionPressure position)
    {
        ArgumentNullException.ThrowIfNull(position);
        var findings = new List<Finding>();
        var at = position.Position.ToString();
        if (position.Stop is { } stop)
        {
            findings.Add(stop);
        }

        switch (position.Cold.Case)
        {
            case ColdPressureCase.Overloaded:
                findings.Add(new Finding("pressure.overloaded", Category.Major, at, Kilograms(position.Load), null, Source.CommonPractice, position.Cold.Cautions[0]));
                break;
            case ColdPressureCase.LimitsConflict:
                var most = position.Cold.Ceiling!;
                var least = position.Cold.Considered.First(l => l is { Bound: LimitBound.Least, Ruled: true });
                findings.Add(new Finding("pressure.limits-conflict", Category.Major, at, Kilopascals(least.Pressure!.Value), Upper(most), most.Source, position.Cold.Cautions[0]));
                break;
            case ColdPressureCase.Set:
            case ColdPressureCase.NotKnown:
                break;
        }

        findings.AddRange(position.AboveClass);
        if (position.RanLow is { } ranLow)
        {
            findings.Add(ranLow);
        }
        else if (position.Reading is { } reading)
        {
            findings.AddRange(OfReading(position, reading, at));
        }

        return findings;
    }

    private static IEnumerable<Finding> OfReading(PositionPressure position, JudgedReading reading, string at)
    {
        var measured = Kilopascals(reading.Found.Value);
        if (reading.Found is { Hot: false } && position.Cold.Ceiling is { } ceiling && reading.Found.Value > ceiling.Pressure && position.AboveClass.All(f => f.Rule != "pressure.above-class"))
        {
            yield return new Finding("pressure.above-maximum", Category.Major, at, measured, Upper(ceiling), ceiling.Source,
                "Stand clear, let air out to the cold pressure, and find out who set it so.");
        }

        var cold = position.Cold.Pressure;
        var limit = cold is null ? null : new Limit(Kilopascals(cold.Pressure), cold.Source);
        switch (reading.Verdict)
        {
            case ReadingVerdict.Low:
            case ReadingVerdict.HotLow:
                // Hot, low and nobody knows how low: it may have run low, and a person decides before any air goes in.
                var unknown = reading is { Verdict: ReadingVerdict.HotLow, ColdEquivalent: null };
                yield return new Finding("pressure.low", unknown ? Category.Refer : reading.WithinMonthsLoss ? Category.None : Category.Minor, at, measured, limit, Inflation, reading.Advice);
                break;
            case ReadingVerdict.High:
                yield return new Finding("pressure.high", Category.Minor, at, measured, limit, Source.CommonPractice, reading.Advice);
                break;
            case ReadingVerdict.HotLeave:
                yield return new Finding("pressure.hot", Category.None, at, measured, limit, Source.CommonPractice, reading.Advice);
                break;
            case ReadingVerdict.OnTarget:
                yield return new Finding("pressure.cold", Category.None, at, measured, limit, limit!.Source, reading.Advice);
                break;
            case ReadingVerdict.NothingToCompare:
                yield return new Finding("pressure.no-placard", Category.Minor, at, measured, null, Source.CommonPractice, reading.Advice);
                break;
            case ReadingVerdict.RunLow:
                // Told beside it, by the rule that an inspection tells it by.
                break;
        }
    }

    private static Source Inflation { get; } = new("Directive 2014/45/EU Annex I 5.2.3", SourceStatus.FromMemory);

    private static Limit Upper(SourcedPressure pressure) => new(Kilopascals(pressure.Pressure), pressure.Source);

    private static Amount Kilopascals(GaugePressure pressure) => Amount.Of(pressure, "kPa", 0);

    private static Amount Kilograms(Mass? mass) => mass is { } m ? Amount.Of(m, "kg", 0) : Amount.Word("not known");
}
