using Trundle.Engine.Findings;
using Trundle.Engine.Reference;
using Trundle.Measures;

namespace Trundle.Engine.Pressure;

/// <summary>What a loss amounts to.</summary>
public enum LeakCase
{
    /// <summary>No more than a sound tyre loses, or at least for certain below what a leak is looked for at.</summary>
    Sound,

    /// <summary>For certain more than a sound tyre loses.</summary>
    MoreThanSound,

    /// <summary>For certain so much that a leak is looked for.</summary>
    Leak,

    /// <summary>The readings are too coarse, or too near to each other.</summary>
    CannotTell,

    /// <summary>For certain there is more air now than before: air was let in, or a temperature is wrong.</summary>
    Rose,
}

/// <summary>A loss held against what a sound tyre loses.</summary>
/// <param name="Case">How it came out.</param>
/// <param name="Sound">What a sound tyre loses in a month at the temperature of these readings, at most.</param>
/// <param name="Look">The loss in a month from which a leak is looked for.</param>
/// <param name="Finding">The same as a finding.</param>
/// <param name="Cautions">What stands beside it.</param>
public sealed record LeakVerdict(LeakCase Case, Limit Sound, Limit Look, Finding Finding, IReadOnlyList<string> Cautions)
{
    /// <summary>Judges a loss.</summary>
    /// <param name="loss">The loss.</param>
    /// <param name="position">Where the tyre sits, or null.</param>
    /// <source>2 psi a month: tyre maker's consumer guide (read); a sound tyre: Tire Science and Technology 13 (1985), p. 16 (abstract read)</source>
    public static LeakVerdict Of(PressureLoss loss, string? position)
    {
        ArgumentNullException.ThrowIfNull(loss);
        var cautions = new List<string>();
        var most = Figures.Of("leak.car-pressure").As<GaugePressure>();
        var share = Math.Max(1, loss.Points.Max(p => p.Reading.Value) / most);
        var sound = Share(SoundLoss(loss, cautions), share, most);
        var look = Share(Figures.Of("leak.look-month").Limit(1), share, most);
        var month = loss.PerMonth;
        var soundLoss = GaugePressure.FromKilopascals(sound.Amount.Value!.Value);
        var lookLoss = GaugePressure.FromKilopascals(look.Amount.Value!.Value);
        var found = month.High.Pascals < 0 ? LeakCase.Rose
            : month.Low > lookLoss ? LeakCase.Leak
            : month.Low > soundLoss ? LeakCase.MoreThanSound
            : month.High <= lookLoss && !loss.Points.Any(p => FlatReading.Is(p.Reading)) ? LeakCase.Sound
            : LeakCase.CannotTell;
        if (share > 1)
        {
            cautions.Add("What a sound tyre loses was published for car tyres; it is taken here in proportion to the pressure, which is our own choice. A commercial tyre of this pressure is judged by its maker's word.");
        }

        if (found == LeakCase.CannotTell)
        {
            var days = loss.Apart(lookLoss - soundLoss).TotalDays;
            cautions.Add($"The range holds both a sound tyre and a leak. With this gauge and thermometer two readings about {Quantity.Number(Math.Ceiling(days), 0)} days apart tell them apart; one and the same gauge with a known repeatability, a barometer and a tyre at a steady temperature tell sooner.");
        }

        var amount = new Amount(month.Estimate.Kilopascals, "kPa", $"{month.Estimate.Text("kPa", 1)} a month ({month.Low.Text("kPa", 1)} to {month.High.Text("kPa", 1)})");
        var (category, limit, source, action) = found switch
        {
            LeakCase.Leak => (Category.Refer, look, look.Source, "Look for the leak before hand-back: valve and core, bead and flange, tread, sidewall, wheel. Set the pressure after that, and check it again."),
            LeakCase.MoreThanSound => (Category.Minor, sound, sound.Source, "More than a sound tyre loses: look at valve, core, bead and tread, set the pressure, and check it again within the month."),
            LeakCase.Sound => (Category.None, sound, sound.Source, "No more than is to be expected of a sound tyre: check it cold each month."),
            LeakCase.CannotTell => (Category.None, look, look.Source, "These readings cannot tell a leak from a sound tyre: measure again later, cold, with the same gauge."),
            LeakCase.Rose => (Category.Minor, null, Source.CommonPractice, "There is more air than before: air was let in between the readings, or a temperature or a gauge is wrong. Mark the reading after the filling, or measure again."),
        };
        return new LeakVerdict(found, sound, look, new Finding("pressure.loss", category, position, amount, limit, source, action), cautions);
    }

    /// <summary>A car tyre's loss at a pressure beyond a car tyre's, in proportion to it: what goes through the rubber is driven by the pressure.</summary>
    private static Limit Share(Limit limit, double share, GaugePressure most) => share <= 1
        ? limit
        : new Limit(Amount.Of(GaugePressure.FromKilopascals(limit.Amount.Value!.Value * share), "kPa", 1), new Source($"a car tyre's loss in proportion to the pressure above {most.Text("kPa", 0)} (own choice): {limit.Source.Text}", SourceStatus.Calculated));

    /// <summary>At the mean temperature of the readings: between the two published temperatures on the straight line, beyond them the nearer one's.</summary>
    private static Limit SoundLoss(PressureLoss loss, List<string> cautions)
    {
        var (cool, warm) = (Figures.Of("leak.sound-cool"), Figures.Of("leak.sound-warm"));
        var (from, to) = (Figures.Of("leak.cool").As<Temperature>(), Figures.Of("leak.warm").As<Temperature>());
        var mean = Temperature.FromKelvins(loss.Points.Average(p => p.Reading.Tyre.Kelvins));
        if (mean <= from)
        {
            return cool.Limit(1);
        }

        if (mean >= to)
        {
            if (mean.Kelvins > to.Kelvins + 1)
            {
                cautions.Add($"Rubber lets more air through the warmer it is; above {to.Text("°C", 0)} no figure is held, and the one for that temperature is used.");
            }

            return warm.Limit(1);
        }

        var part = (mean.Kelvins - from.Kelvins) / (to.Kelvins - from.Kelvins);
        var between = cool.As<GaugePressure>() + ((warm.As<GaugePressure>() - cool.As<GaugePressure>()) * part);
        return new Limit(Amount.Of(between, "kPa", 1), new Source($"between the losses at {from.Text("°C", 0)} and {to.Text("°C", 0)} of {cool.Source.Text}", SourceStatus.Calculated));
    }
}
