using Trundle.Engine.Condition;
using Trundle.Engine.Findings;
using Trundle.Engine.Reference;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Engine.Pressure;

/// <summary>What a pressure reading amounts to.</summary>
public enum ReadingVerdict
{
    /// <summary>There is no cold pressure to hold it against.</summary>
    NothingToCompare,

    /// <summary>On the cold pressure.</summary>
    OnTarget,

    /// <summary>Below the cold pressure, but not run low.</summary>
    Low,

    /// <summary>So low that the tyre may be hurt inside: no air before it was looked at.</summary>
    RunLow,

    /// <summary>Above the cold pressure, measured cold.</summary>
    High,

    /// <summary>Hot and not below the cold pressure: leave it, and measure cold.</summary>
    HotLeave,

    /// <summary>Hot, and yet below the cold pressure; or below it once counted back to cold.</summary>
    HotLow,
}

/// <summary>A reading held against the cold pressure, as what it is: a hot tyre is judged as hot and never bled.</summary>
/// <param name="Found">The reading.</param>
/// <param name="Verdict">What it amounts to.</param>
/// <param name="ColdEquivalent">What a hot reading would be at the air's temperature, where the tyre's temperature is known; else null.</param>
/// <param name="Advice">What to do, in a sentence or two.</param>
public sealed record JudgedReading(PressureReading Found, ReadingVerdict Verdict, GaugePressure? ColdEquivalent, string Advice)
{
    /// <summary>True where a tyre read cold is low by no more than a sound car tyre loses in a month, or above a car's pressures than the gauge may err: it is brought up, and there is nothing to look for.</summary>
    public bool WithinMonthsLoss { get; init; }

    /// <summary>
    /// Judges a reading.
    /// </summary>
    /// <param name="found">What the gauge showed. Where it is hot, its temperature is that of the tyre, not of the air.</param>
    /// <param name="cold">The cold pressure to hold it against, or null.</param>
    /// <param name="ambient">The air's temperature, to count a hot reading back to; or null.</param>
    /// <param name="specified">What it should have had until now, to tell a tyre run low: the placard's cold pressure, where the load to come asks for more. Null takes <paramref name="cold"/>.</param>
    /// <source>tyre maker's consumer guide: cold is 3 h parked or less than 1.6 km, set hot is 28 kPa over cold, then checked cold; run low at 80 %: TMC and USTMA (second-hand)</source>
    public static JudgedReading Of(PressureReading found, SourcedPressure? cold, Temperature? ambient, GaugePressure? specified = null)
    {
        ArgumentNullException.ThrowIfNull(found);
        var equivalent = found is { Hot: true, Temperature: { } tyre } && ambient is { } air && tyre > air
            ? AirLaw.After(found.Value, tyre, air, AirLaw.SeaLevel, AirLaw.SeaLevel)
            : (GaugePressure?)null;
        if (cold is null)
        {
            return new JudgedReading(found, ReadingVerdict.NothingToCompare, equivalent, "There is no cold pressure to hold this reading against: read the placard.");
        }

        var target = cold.Pressure;
        var resolution = Figures.Of("pressure.reading-resolution").As<GaugePressure>();
        var targetText = target.Text("kPa", 0);
        if ((equivalent ?? found.Value) <= (specified ?? target) * RunLow.Share)
        {
            return new JudgedReading(found, ReadingVerdict.RunLow, equivalent,
                $"At or below {RunLow.Limit.Text} of what it should be, the tyre counts as run low: take the assembly off, demount and look inside before any air goes in.");
        }

        if (found.Hot)
        {
            var addition = Figures.Of("pressure.hot-addition").As<GaugePressure>();
            var raise = $"Never bleed a hot tyre. Bring it to {(target + addition).Text("kPa", 0)} (cold pressure and {addition.Text("kPa", 0)}) and check again cold.";
            return (equivalent ?? found.Value).Pascals < target.Pascals - resolution.Pascals
                ? new JudgedReading(found, ReadingVerdict.HotLow, equivalent, equivalent is null
                    ? $"Hot, and still below the cold pressure of {targetText}: it is too low, and how low only a cold reading tells, or the tyre's and the air's temperature. Never bleed a hot tyre, and put no air in: it may have run low. Let it stand until it is cold and read it again."
                    : $"Counted back to cold this is {equivalent.Value.Text("kPa", 0)}, below {targetText}. {raise}")
                : new JudgedReading(found, ReadingVerdict.HotLeave, equivalent, equivalent is null
                    ? $"Hot: leave it as it is, never bleed a hot tyre. Whether it is at {targetText} only a cold reading tells, after some hours' standing."
                    : $"Hot: leave it as it is, never bleed a hot tyre. Counted back to cold this is {equivalent.Value.Text("kPa", 0)}, with {targetText} asked; check again cold.");
        }

        var (usual, low) = Usual(target, targetText);
        var within = target.Pascals - found.Value.Pascals <= usual.Pascals;
        return found.Value.Pascals < target.Pascals - resolution.Pascals
            ? new JudgedReading(found, ReadingVerdict.Low, null, within ? low.Within : low.More) { WithinMonthsLoss = within }
            : found.Value.Pascals > target.Pascals + resolution.Pascals
                ? new JudgedReading(found, ReadingVerdict.High, null, $"Let air out to {targetText} while the tyre is cold.")
                : new JudgedReading(found, ReadingVerdict.OnTarget, null, "As it should be.");
    }

    /// <summary>How much may be missing with nothing to look for: a car tyre's loss in a month; at higher pressures, for which no loss is published, what the gauge may err.</summary>
    private static (GaugePressure Usual, (string Within, string More) Low) Usual(GaugePressure target, string targetText)
    {
        if (target <= Figures.Of("leak.car-pressure").As<GaugePressure>())
        {
            var month = Figures.Of("pressure.loss-month");
            var text = $"{month.As<GaugePressure>().Text("kPa", 0)} a month ({month.Source.ForPeople})";
            return (month.As<GaugePressure>(), (
                $"Set it to {targetText}, cold: no more is missing than a sound car tyre loses, {text}.",
                $"Set it to {targetText}, cold, and find out where the air went: a sound car tyre loses about {text}."));
        }

        var gauge = Figures.Of(target.Kilopascals > 1000 ? "leak.gauge-high" : "leak.gauge-middle");
        return (gauge.As<GaugePressure>(), (
            $"Set it to {targetText}, cold: no more is missing than a gauge may err, {gauge.As<GaugePressure>().Text("kPa", 0)} ({gauge.Source.ForPeople}).",
            $"Set it to {targetText}, cold, and find out where the air went."));
    }
}
